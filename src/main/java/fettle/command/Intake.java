package fettle.command;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.document.Document;
import fettle.document.DocumentProblem;
import fettle.document.DocumentSet;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import java.io.File;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Takes in what the command line names, and says so where there is nothing to take in. */
final class Intake {

    private Intake() {}

    /** Reads a catalog; what is wrong inside its documents is for the findings to say. */
    static CatalogReading catalog(RuleBase rules, Path directory) {
        if (!Files.exists(directory)) {
            throw new NotChecked("there is no catalog at " + directory + "; name the directory that holds its documents");
        }
        return catalog(rules, Documents.catalog(directory), shown(directory));
    }

    /** Reads the catalog in a set of documents that were looked for in a place. */
    static CatalogReading catalog(RuleBase rules, DocumentSet found, String place) {
        List<Document> documents = found.documents();
        if (documents.size() == 1 && documents.get(0).file().equals(place)) {
            DocumentProblem problem = documents.get(0).problems().get(0);
            throw new NotChecked("there is no catalog at " + place + ": " + problem.what() + "; " + problem.remedy());
        }
        return CatalogReading.of(rules, found);
    }

    /** Reads builds; every path that is named must be there. */
    static DocumentSet builds(List<Path> paths, InputStream standardInput) {
        for (Path path : paths) {
            if (!path.toString().equals("-") && !Files.exists(path)) {
                throw new NotChecked("there is no build at " + path + "; name a file, a directory of files, or - for standard input");
            }
        }
        return Documents.builds(paths, standardInput);
    }

    /** The platform of that id. */
    static Part platform(Catalog catalog, String id) {
        return Optional.ofNullable(catalog.platforms().get(id))
                .orElseThrow(() -> new NotChecked("the catalog has no platform " + id + NotChecked.meant(id, catalog.platforms().keySet())));
    }

    private static String shown(Path path) {
        return path.toString().replace(File.separatorChar, '/');
    }
}
