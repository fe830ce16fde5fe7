package io.github.tiderule.api.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real browser, from the system's packages, at one service. */
final class Browser implements AutoCloseable {

  private static final Path CHROMIUM = Path.of("/usr/lib/chromium/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Pattern ASKED =
      Pattern.compile("\"Network\\.requestWillBeSent\".*?\"url\":\"((?:https?|wss?)://[^\"]*)\"");

  private final ChromeDriver driver;
  private String base = "";

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts one; without the packages, the test is left out, but not on a build server. */
  static Browser start() {
    if (!Files.isExecutable(CHROMIUM) || !Files.isExecutable(DRIVER)) {
      boolean mustBeThere = "true".equals(System.getenv("CI"));
      if (mustBeThere) {
        throw new AssertionError("the build server lacks chromium or chromium-driver");
      }
      Assumptions.abort("no chromium with its driver is installed here");
    }
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        "--no-first-run",
        "--force-prefers-reduced-motion",
        "--lang=en-GB",
        "--accept-lang=en-GB",
        "--window-size=1280,900");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build();
    ChromeDriver driver = new ChromeDriver(service, options);
    driver.manage().timeouts().scriptTimeout(PATIENCE);
    return new Browser(driver);
  }

  /** Turns to a service, with nothing left of an earlier one. */
  void at(int port) {
    base = "http://127.0.0.1:" + port;
    width(1280);
    connected(true);
    driver.get(base + "/help");
    driver.manage().deleteAllCookies();
    driver.executeScript("localStorage.clear()");
    console();
  }

  void open(String path) {
    driver.get(base + path);
  }

  /** The path that is shown, without its query. */
  String path() {
    return URI.create(driver.getCurrentUrl()).getPath();
  }

  /** Makes the window so many pixels wide. */
  void width(int pixels) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", false));
  }

  /** Lets the pages believe that their reader prefers dark grounds, or light ones. */
  void dark(boolean dark) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
  }

  void connected(boolean connected) {
    driver.executeCdpCommand("Network.enable", Map.of());
    driver.executeCdpCommand(
        "Network.emulateNetworkConditions",
        Map.of(
            "offline", !connected, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
  }

  WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(By.cssSelector(css));
  }

  String text(String css) {
    return find(css).getText();
  }

  /** The words of a part of the page, folded away or not, with single spaces. */
  String read(String css) {
    return String.valueOf(find(css).getDomProperty("textContent")).replaceAll("\\s+", " ").strip();
  }

  /** Unfolds a part of the page, as somebody does who wants to read it. */
  void unfold(String css) {
    WebElement part = find(css);
    if (part.getDomAttribute("open") == null) {
      WebElement summary = part.findElement(By.tagName("summary"));
      driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", summary);
      summary.click();
    }
  }

  String body() {
    return text("body");
  }

  /**
   * Types into a field, as a person who first empties it; dates are set as a calendar sets them.
   */
  void type(String name, String value) {
    WebElement field = find("main form [name='" + name + "']");
    if (List.of("date", "datetime-local", "time").contains(field.getDomAttribute("type"))) {
      driver.executeScript(
          "arguments[0].value = arguments[1];"
              + "arguments[0].dispatchEvent(new Event('input', {bubbles: true}))",
          field,
          value);
    } else {
      field.clear();
      field.sendKeys(value);
    }
  }

  void choose(String name, String value) {
    WebElement field = find("main form [name='" + name + "'][value='" + value + "']");
    driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", field);
    field.click();
  }

  /** Presses the button of that text, and waits for the page that follows. */
  void press(String text) {
    WebElement page = find("html");
    WebElement button = button(text);
    driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", button);
    button.click();
    await(browser -> isGone(page));
  }

  WebElement button(String text) {
    return driver.findElement(By.xpath("//main//button[normalize-space(.)=\"" + text + "\"]"));
  }

  void follow(String text) {
    WebElement page = find("html");
    WebElement link = driver.findElement(By.partialLinkText(text));
    driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", link);
    link.click();
    await(browser -> isGone(page));
  }

  private boolean isGone(WebElement page) {
    try {
      page.isDisplayed();
      return false;
    } catch (org.openqa.selenium.StaleElementReferenceException e) {
      return "complete".equals(driver.executeScript("return document.readyState"));
    } catch (org.openqa.selenium.WebDriverException e) {
      return false;
    }
  }

  <T> T await(Function<Browser, @Nullable T> condition) {
    return new WebDriverWait(driver, PATIENCE).until(one -> condition.apply(this));
  }

  WebElement focused() {
    return driver.switchTo().activeElement();
  }

  Object run(String script) {
    Object result = driver.executeScript(script);
    return result == null ? "" : result;
  }

  /**
   * Keeps a picture of the whole page, if {@code -Dtiderule.pictures=DIRECTORY} asks for it, to be
   * looked at.
   */
  void picture(String name) {
    String directory = System.getProperty("tiderule.pictures");
    if (directory == null) {
      return;
    }
    Object picture =
        driver
            .executeCdpCommand(
                "Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true))
            .get("data");
    try {
      Files.write(
          Files.createDirectories(Path.of(directory)).resolve(name + ".png"),
          Base64.getDecoder().decode(String.valueOf(picture)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The words of the page as it is printed, with single spaces. */
  String printed() {
    Object data = driver.executeCdpCommand("Page.printToPDF", Map.of()).get("data");
    try (PDDocument paper = Loader.loadPDF(Base64.getDecoder().decode(String.valueOf(data)))) {
      return new PDFTextStripper().getText(paper).replaceAll("\\s+", " ");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What axe finds wrong with the page that is shown. */
  List<String> faults() {
    return faults("['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']");
  }

  /** What axe finds too faint; all that changes with the colours. */
  List<String> faint() {
    return faults("['color-contrast', 'link-in-text-block']");
  }

  private List<String> faults(String wanted) {
    driver.executeScript(Axe.SCRIPT);
    Object found =
        driver.executeAsyncScript(
            "const done = arguments[arguments.length - 1];"
                + "axe.run(document, {runOnly: "
                + wanted
                + "}).then(found => done(found.violations.map("
                + "one => one.id + ': ' + one.nodes.map(node => node.html).join(' | '))),"
                + " fault => done([String(fault)]))");
    List<String> faults = new ArrayList<>();
    if (found instanceof List<?> list) {
      list.forEach(one -> faults.add(String.valueOf(one)));
    }
    return faults;
  }

  /** How many pixels the page is wider than its window. */
  long tooWide() {
    Object wider =
        run("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    return ((Number) wider).longValue();
  }

  /** What the console says since it was last asked. */
  List<String> console() {
    List<String> said = new ArrayList<>();
    for (LogEntry entry : driver.manage().logs().get(LogType.BROWSER)) {
      said.add(entry.getMessage());
    }
    return said;
  }

  /** Every host and port that was asked for anything since it was last asked. */
  Set<String> asked() {
    Set<String> hosts = new TreeSet<>();
    for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
      Matcher matcher = ASKED.matcher(entry.getMessage());
      while (matcher.find()) {
        hosts.add(URI.create(matcher.group(1)).getAuthority());
      }
    }
    return hosts;
  }

  @Override
  public void close() {
    driver.quit();
  }

  /** The script that checks pages, from its library. */
  private static final class Axe {
    static final String SCRIPT = read();

    private static String read() {
      try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
        if (in == null) {
          throw new AssertionError("axe.min.js is not on the class path");
        }
        return new String(in.readAllBytes(), StandardCharsets.UTF_8);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
