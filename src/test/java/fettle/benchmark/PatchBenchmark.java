package fettle.benchmark;

import fettle.command.Main;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Times patch day on a large made-up catalog: two catalogs compared with a thousand builds, ten thousand builds validated in one call, and a hundred that name a
 * lens, so that swaps are looked for as well. Every figure is of a whole command, from files to text, in a virtual machine that has run nothing before the first.
 */
public final class PatchBenchmark {

    private static final int BUILDS = 10_000;
    private static final int COMPARED = 1_000;
    private static final int REVIEWED = 100;
    private static final String LENS = "\"lens\":\"control\"";
    private static final Pattern MASS = Pattern.compile("\"mass\":(\\d+)");
    private static final Pattern PRICE = Pattern.compile("\"price\":(\\d+)");

    private PatchBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        Path place = Files.createTempDirectory("fettle-patch");
        try {
            Path old = place.resolve("old");
            Path now = place.resolve("now");
            Path many = place.resolve("many");
            BenchmarkCatalog.Size large = BenchmarkCatalog.Size.LARGE;
            BenchmarkCatalog.of(new BenchmarkCatalog.Size(large.parts(), large.platforms(), large.families(), COMPARED, false), 7).write(old);
            BenchmarkCatalog.of(new BenchmarkCatalog.Size(large.parts(), large.platforms(), large.families(), COMPARED, false), 7).write(now);
            BenchmarkCatalog.of(new BenchmarkCatalog.Size(large.parts(), large.platforms(), large.families(), BUILDS, false), 7).write(many);
            patch(now);
            without(LENS, many.resolve("builds"));
            Path few = place.resolve("few");
            BenchmarkCatalog.of(new BenchmarkCatalog.Size(large.parts(), large.platforms(), large.families(), REVIEWED, false), 7).write(few);

            run("compare two catalogs and " + COMPARED + " builds", "compare", old.toString(), now.toString(), "--builds", old.resolve("builds").toString());
            double seconds = run("validate " + BUILDS + " builds without a lens", "validate", old.toString(), many.resolve("builds").toString());
            System.out.println("  " + Math.round(BUILDS / seconds) + " builds a second");
            run("validate " + REVIEWED + " builds with a lens", "validate", old.toString(), few.resolve("builds").toString());
        } finally {
            delete(place);
        }
    }

    private static void without(String text, Path builds) throws IOException {
        for (Path file : documents(builds)) {
            String all = Files.readString(file);
            if (!all.contains(text)) {
                throw new IllegalStateException("no " + text + " in " + file);
            }
            Files.writeString(file, all.replace(text, "\"note\":\"no lens\""));
        }
    }

    private static List<Path> documents(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    /** Makes every 40th mass greater by a tenth, and every 25th price. */
    private static void patch(Path catalog) throws IOException {
        for (Path file : documents(catalog)) {
            Files.writeString(file, raised(raised(Files.readString(file), MASS, "mass", 40), PRICE, "price", 25));
        }
    }

    private static String raised(String text, Pattern pattern, String name, int every) {
        int[] met = {0};
        return pattern.matcher(text).replaceAll((MatchResult found) -> {
            met[0]++;
            BigDecimal figure = new BigDecimal(found.group(1));
            return met[0] % every == 0 ? "\"" + name + "\":" + figure.add(figure.movePointLeft(1)).toBigInteger().add(BigInteger.ONE) : found.group();
        });
    }

    private static double run(String what, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        long start = System.nanoTime();
        int code = Main.run(arguments, InputStream.nullInputStream(), new PrintStream(out, false, StandardCharsets.UTF_8), System.err);
        double seconds = (System.nanoTime() - start) / 1e9;
        List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
        System.out.printf("%s: %.1f s, exit code %d, %d lines%n", what, seconds, code, lines.size());
        System.out.println("  " + (lines.isEmpty() ? "" : lines.get(lines.size() - 1).strip()));
        return seconds;
    }

    private static void delete(Path place) throws IOException {
        try (Stream<Path> all = Files.walk(place)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }
}
