package fettle.document;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Reads the documents of a folder as they were in a revision of a git repository. It is named {@code REVISION:PATH}, as git does: the path begins at the
 * top of the repository, or with {@code ./} at the current directory. The documents are named likewise, {@code REVISION:PATH/FILE}.
 */
public final class RevisionFolder {
    private static final Pattern DRIVE = Pattern.compile("[A-Za-z]:([/\\\\].*)?");
    private static final String LINK = "120000";

    /** A file of the folder, with its content's name in the repository. */
    private record Listed(String mode, String content, long size, String path) {}

    private final String shown;
    private final Git git;
    private final String tree;

    private RevisionFolder(String shown, Git git, String tree) {
        this.shown = shown;
        this.git = git;
        this.tree = tree;
    }

    /** Whether a text names a folder in a revision: it has a colon, and there is nothing of that name on disk. */
    public static boolean isNamed(String text) {
        if (text.indexOf(':') < 0 || DRIVE.matcher(text).matches()) {
            return false;
        }
        try {
            return !Files.exists(Path.of(text));
        } catch (InvalidPathException noPath) {
            return true;
        }
    }

    /**
     * Finds the folder. Throws {@link RevisionUnreadable} where there is no git, no repository, no such revision or no such folder in it.
     *
     * @param places where to look for the repository: the first that lies in one is taken
     */
    public static RevisionFolder find(String name, List<Path> places) {
        int colon = name.indexOf(':');
        String revision = name.substring(0, colon);
        String path = name.substring(colon + 1).replace('\\', '/').replaceFirst("/+$", "");
        if (revision.isEmpty() || revision.startsWith("-")) {
            throw new RevisionUnreadable("\"" + name + "\" names no revision before the colon; write it as HEAD~1:" + path);
        }
        Git git = repository(places);
        if (!git.ask(List.of("rev-parse", "--verify", "--quiet", revision + "^{tree}")).fine()) {
            throw new RevisionUnreadable("there is no revision " + revision + " in the repository at " + top(git)
                    + "; git log lists those there are, and a shallow clone has only the newest");
        }
        // Git takes a dot for a folder only with a slash behind it.
        String asked = path.equals(".") || path.equals("..") || path.endsWith("/..") ? path + "/" : path;
        Git.Answer found = git.ask(List.of("rev-parse", "--verify", "--quiet", revision + ":" + asked));
        if (!found.fine()) {
            throw new RevisionUnreadable("revision " + revision + " has no " + path + "; a path begins at the top of the repository, " + top(git)
                    + ", or with ./ at the current directory");
        }
        if (!git.ask(List.of("cat-file", "-t", found.line())).line().equals("tree")) {
            throw new RevisionUnreadable("in revision " + revision + ", " + path + " is a file; name the folder that holds the documents");
        }
        return new RevisionFolder(revision + ":" + path, git, found.line());
    }

    private static Git repository(List<Path> places) {
        String complaint = "";
        for (Path place : places) {
            if (Files.isDirectory(place)) {
                Git git = new Git(place);
                Git.Answer answer = git.ask(List.of("rev-parse", "--git-dir"));
                if (answer.fine()) {
                    return git;
                }
                complaint = answer.complaint();
            }
        }
        throw new RevisionUnreadable("no git repository could be opened here to read a revision from"
                + (complaint.isEmpty() ? "" : " (git says: " + firstLine(complaint) + ")")
                + "; run this inside the repository, or name a folder instead");
    }

    private static String top(Git git) {
        Git.Answer answer = git.ask(List.of("rev-parse", "--show-toplevel"));
        return answer.fine() ? answer.line() : git.ask(List.of("rev-parse", "--absolute-git-dir")).line();
    }

    /** The documents of a catalog: all in the folder and below, except below a folder named {@code builds}. */
    public DocumentSet catalog() {
        return read(path -> !path.startsWith(Documents.BUILDS_FOLDER + "/") && !path.contains("/" + Documents.BUILDS_FOLDER + "/"));
    }

    /** All documents in the folder and below. */
    public DocumentSet builds() {
        return read(path -> true);
    }

    private DocumentSet read(Predicate<String> wanted) {
        List<Document> documents = new ArrayList<>();
        List<Listed> toRead = new ArrayList<>();
        for (Listed file : listed()) {
            if (!wanted.test(file.path) || !DocumentFile.hasDocumentName(file.path.substring(file.path.lastIndexOf('/') + 1))) {
                continue;
            }
            if (file.mode.equals(LINK)) {
                documents.add(DocumentFile.unreadable(shown(file), "this is a link, and links are not followed in a revision",
                        "compare with a folder on disk, or put the file itself there").named(file.path));
            } else if (file.size > DocumentFile.MOST_BYTES) {
                documents.add(DocumentFile.tooLarge(shown(file)).named(file.path));
            } else {
                toRead.add(file);
            }
        }
        documents.addAll(contents(toRead));
        if (documents.isEmpty()) {
            documents.add(DocumentFile.unreadable(shown, "no document is in this folder",
                    "name a folder or a revision with files that end in .json, .yaml or .yml"));
        }
        documents.sort(Comparator.comparing(Document::file));
        return new DocumentSet(documents);
    }

    private String shown(Listed file) {
        return shown.endsWith(":") ? shown + file.path : shown + "/" + file.path;
    }

    /** The files of the tree: git prints {@code mode type content size TAB path NUL} for each. */
    private List<Listed> listed() {
        Git.Answer answer = git.ask(List.of("ls-tree", "-r", "-z", "-l", "--full-tree", tree));
        require(answer);
        List<Listed> files = new ArrayList<>();
        for (String line : new String(answer.output(), StandardCharsets.UTF_8).split("\0")) {
            int tab = line.indexOf('\t');
            String[] fields = line.substring(0, Math.max(tab, 0)).split(" +");
            if (fields.length == 4 && fields[1].equals("blob")) {
                files.add(new Listed(fields[0], fields[2], Long.parseLong(fields[3]), line.substring(tab + 1)));
            }
        }
        return files;
    }

    /** The contents, all from one call: git prints {@code content type size NEWLINE bytes NEWLINE} for each that it is asked for. */
    private List<Document> contents(List<Listed> files) {
        StringBuilder asked = new StringBuilder();
        files.forEach(file -> asked.append(file.content).append('\n'));
        Git.Answer answer = git.ask(List.of("cat-file", "--batch"), asked.toString().getBytes(StandardCharsets.US_ASCII));
        require(answer);
        byte[] output = answer.output();
        List<Document> documents = new ArrayList<>();
        int at = 0;
        for (Listed file : files) {
            int end = at;
            while (end < output.length && output[end] != '\n') {
                end++;
            }
            String header = new String(output, at, end - at, StandardCharsets.US_ASCII);
            if (!header.equals(file.content + " blob " + file.size)) {
                throw new RevisionUnreadable("the repository has no content for " + shown(file) + "; fetch it first, since this is never done here");
            }
            int start = end + 1;
            int size = (int) file.size;
            documents.add(DocumentFile.read(shown(file), Arrays.copyOfRange(output, start, start + size)).named(file.path));
            at = start + size + 1;
        }
        return documents;
    }

    private static String firstLine(String complaint) {
        return complaint.lines().findFirst().orElse("it says nothing").replaceFirst("^fatal: ", "");
    }

    private static void require(Git.Answer answer) {
        if (!answer.fine()) {
            throw new RevisionUnreadable("git could not read the revision: " + firstLine(answer.complaint()));
        }
    }
}
