package fettle.command;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.regex.Pattern;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The system's Chromium without a window, looking at a file. */
final class Browser implements AutoCloseable {

    private final ChromeDriver driver;

    Browser() {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(program("chromium").toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--hide-scrollbars", "--window-size=1280,1000");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        driver = new ChromeDriver(new ChromeDriverService.Builder().usingDriverExecutable(program("chromedriver").toFile()).usingAnyFreePort().build(), options);
    }

    private static Path program(String name) {
        Optional<Path> found = Pattern.compile(Pattern.quote(File.pathSeparator)).splitAsStream(System.getenv("PATH"))
                .map(folder -> Path.of(folder, name)).filter(Files::isExecutable).findFirst();
        return found.orElseThrow(() -> new AssertionError(
                "there is no " + name + " on the PATH, so no report can be looked at; install Debian's packages chromium and chromium-driver, as .ci/run does"));
    }

    /** Opens a page anew, at a fragment where one is given. */
    void open(Path page, String fragment) {
        driver.get("about:blank");
        driver.get(page.toUri() + (fragment.isEmpty() ? "" : "#" + fragment));
        await("return location.protocol === 'file:' && document.readyState === 'complete' ? true : null");
    }

    /** What a script answers as soon as that is something; on a busy machine a page may be a while in coming. */
    Object await(String script) {
        long patience = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        Object answer = script(script);
        while (answer == null && System.nanoTime() < patience) {
            try {
                Thread.sleep(50);
            } catch (InterruptedException interrupted) {
                throw new AssertionError("was told to stop while waiting for: " + script, interrupted);
            }
            answer = script(script);
        }
        if (answer == null) {
            throw new AssertionError("waited a minute in vain at " + driver.getCurrentUrl() + " for: " + script);
        }
        return answer;
    }

    /** Shows the page at a width in pixels, in the dark or the light. */
    void show(int width, boolean dark) {
        driver.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", 1000, "deviceScaleFactor", 1, "mobile", false));
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    List<WebElement> all(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    WebElement one(String selector) {
        return driver.findElement(By.cssSelector(selector));
    }

    /** The element of that id, which may hold any character. */
    WebElement id(String id) {
        return (WebElement) script("return document.getElementById(arguments[0])", id);
    }

    Object script(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** Runs what waits for a person to stop typing. */
    void settle() {
        driver.executeAsyncScript("const done = arguments[arguments.length - 1]; setTimeout(done, 250);");
    }

    String title() {
        return driver.getTitle();
    }

    /** What stands in the console, such as errors and breaches of the page's policy. */
    List<String> console() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream().map(entry -> entry.getMessage()).toList();
    }

    /** The addresses that were asked for since this was last called. */
    List<String> requests() {
        Pattern asked = Pattern.compile("\"method\":\"Network\\.requestWillBeSent\".*?\"request\":\\{.*?\"url\":\"([^\"]*)\"");
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .flatMap(entry -> asked.matcher(entry.getMessage()).results().map(found -> found.group(1)))
                .filter(address -> !address.startsWith("about:"))
                .toList();
    }

    byte[] picture() {
        return driver.getScreenshotAs(org.openqa.selenium.OutputType.BYTES);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
