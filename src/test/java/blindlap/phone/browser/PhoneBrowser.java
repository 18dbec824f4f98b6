package blindlap.phone.browser;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.Point;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Interactive;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;

/**
 * A phone: headless Chromium of the size of one, with touch. It knows the laptop by a name, since a
 * browser takes a page of the machine's own address for safe, and a phone on the trail does not.
 */
final class PhoneBrowser implements AutoCloseable {
  /** What the phones call the laptop; it leads to this machine. */
  static final String HOST = "laptop.test";

  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private final Path profile;
  private final ChromeDriver driver;

  /**
   * @param profile folder of the browser's own, which outlives it
   * @param width in CSS pixels
   * @param height in CSS pixels
   */
  PhoneBrowser(Path profile, int width, int height) {
    this.profile = profile;
    ChromeOptions options = new ChromeOptions();
    options.setBinary(System.getProperty("chromium", "/usr/bin/chromium"));
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-dev-shm-usage",
        "--host-resolver-rules=MAP " + HOST + " 127.0.0.1",
        "--user-data-dir=" + profile);
    Map<String, Object> emulation = new HashMap<>();
    emulation.put(
        "deviceMetrics",
        Map.of("width", width, "height", height, "pixelRatio", 2.0, "touch", true));
    options.setExperimentalOption("mobileEmulation", emulation);
    driver =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(
                    new File(System.getProperty("chromedriver", "/usr/bin/chromedriver")))
                .usingAnyFreePort()
                .withSilent(true)
                .build(),
            options);
    driver.executeCdpCommand("Network.enable", Map.of());
  }

  /** A phone of its own, whose folder goes with the test's. */
  static PhoneBrowser fresh(Path folder, String name, int width, int height) {
    try {
      return new PhoneBrowser(Files.createDirectories(folder.resolve(name)), width, height);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Opens an address. */
  void open(String address) {
    driver.get(address);
  }

  /** Loads the page again; the browser's own error page where nothing answers. */
  void reload() {
    try {
      driver.navigate().refresh();
    } catch (org.openqa.selenium.WebDriverException expected) {
      // Without signal the browser says so itself.
      Objects.requireNonNull(expected.getMessage());
    }
  }

  /** The phone is out of reach, or back. */
  void signal(boolean there) {
    driver.executeCdpCommand(
        "Network.emulateNetworkConditions",
        Map.of("offline", !there, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
  }

  /** How many times slower the processor seems. */
  void slower(int times) {
    driver.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", times));
  }

  /** Another size, as when the phone is turned. */
  void size(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 2, "mobile", true));
  }

  /** Milliseconds from asking for the page to the first words on it. */
  double firstPaint() {
    String asked = "return performance.getEntriesByName('first-contentful-paint')[0].startTime";
    return ((Number) Objects.requireNonNull(script(asked))).doubleValue();
  }

  /** What reaches out of the view to the right, by its words. */
  List<?> tooWide() {
    return (List<?>)
        Objects.requireNonNull(
            script(
                "return [...document.querySelectorAll('body *')].filter(e => e.offsetParent &&"
                    + " e.getBoundingClientRect().right > innerWidth + 1)"
                    + ".map(e => e.textContent.slice(0, 40))"));
  }

  /** What a script answers. */
  Object script(String script, Object... arguments) {
    return ((JavascriptExecutor) driver).executeScript(script, arguments);
  }

  /** What the page shows, as a reader would read it. */
  String words() {
    return Objects.requireNonNull(script("return document.body.innerText")).toString();
  }

  /** Waits until the page shows some words. */
  void sees(String words) {
    until(() -> words().contains(words), () -> "\"" + words + "\" in:\n" + words());
  }

  /** Waits until the page no longer shows some words. */
  void seesNoMore(String words) {
    until(() -> !words().contains(words), () -> "no \"" + words + "\" in:\n" + words());
  }

  private static void until(BooleanSupplier come, java.util.function.Supplier<String> what) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (System.nanoTime() < end) {
      try {
        if (come.getAsBoolean()) {
          return;
        }
        Thread.sleep(50);
      } catch (StaleElementReferenceException again) {
        Objects.requireNonNull(again);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
    throw new AssertionError("waited in vain for " + what.get());
  }

  /** Waits until a condition of the test holds. */
  void until(String what, BooleanSupplier come) {
    until(come, () -> what + "; the page:\n" + words());
  }

  /** The first element in view of a selector. */
  WebElement find(String css) {
    WebElement[] found = new WebElement[1];
    until(
        css,
        () -> {
          found[0] =
              driver.findElements(By.cssSelector(css)).stream()
                  .filter(WebElement::isDisplayed)
                  .findFirst()
                  .orElse(null);
          return found[0] != null;
        });
    return found[0];
  }

  /** A button in view by its words, or the beginning of them. */
  WebElement button(String words) {
    WebElement[] found = new WebElement[1];
    until(
        "button \"" + words + "\"",
        () -> {
          found[0] =
              driver.findElements(By.cssSelector("button")).stream()
                  .filter(b -> b.isDisplayed() && b.isEnabled() && b.getText().startsWith(words))
                  .findFirst()
                  .orElse(null);
          return found[0] != null;
        });
    return found[0];
  }

  /** A finger touches the button with these words. */
  void touch(String words) {
    for (int tries = 1; ; tries++) {
      try {
        touch(button(words), 0.5);
        return;
      } catch (StaleElementReferenceException drawnAnew) {
        if (tries == 5) {
          throw drawnAnew;
        }
      }
    }
  }

  /** A finger touches what a selector finds. */
  void touchAt(String css, double share) {
    for (int tries = 1; ; tries++) {
      try {
        touch(find(css), share);
        return;
      } catch (StaleElementReferenceException drawnAnew) {
        if (tries == 5) {
          throw drawnAnew;
        }
      }
    }
  }

  /**
   * A finger marks a line scale, and looks whether it is marked: a touch in the moment in which a
   * page was drawn anew counts for nothing, and whoever rides touches again.
   */
  void mark(String question, double share) {
    for (int tries = 1; tries <= 3; tries++) {
      touchAt("[id='q-" + question + "'] .line", share);
      long end = System.nanoTime() + Duration.ofSeconds(2).toNanos();
      while (System.nanoTime() < end) {
        Object words =
            script(
                "const s = document.getElementById(arguments[0]);"
                    + " return s && s.getAttribute('aria-valuetext')",
                "q-" + question);
        if (words != null && !words.equals("not marked")) {
          return;
        }
      }
    }
    throw new AssertionError("\"" + question + "\" stays without a mark");
  }

  /** A finger touches something, at a share of its width. */
  void touch(WebElement at, double share) {
    until(
        "a moment to read",
        () -> Boolean.FALSE.equals(script("return document.body.classList.contains('fresh')")));
    script("arguments[0].scrollIntoView({block: 'center'})", at);
    Point corner = place(at);
    Dimension size = at.getSize();
    int x = corner.x + (int) Math.round(size.width * share);
    int y = corner.y + size.height / 2;
    finger(x, y, Duration.ofMillis(30));
  }

  /** A finger touches one place twice at once, as it happens in gloves. */
  void touchTwice(String words) {
    WebElement at = button(words);
    touch(at, 0.5);
    Point corner = new Point(60, 780);
    finger(corner.x, corner.y, Duration.ofMillis(30));
  }

  /** A finger holds something for a while. */
  void hold(WebElement at, Duration time) {
    script("arguments[0].scrollIntoView({block: 'center'})", at);
    Point corner = place(at);
    finger(corner.x + at.getSize().width / 2, corner.y + at.getSize().height / 2, time);
  }

  private Point place(WebElement at) {
    List<?> box =
        (List<?>)
            script("const b = arguments[0].getBoundingClientRect(); return [b.left, b.top]", at);
    return new Point(
        (int) Math.round(((Number) box.get(0)).doubleValue()),
        (int) Math.round(((Number) box.get(1)).doubleValue()));
  }

  private void finger(int x, int y, Duration down) {
    PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, "finger");
    Sequence touch = new Sequence(finger, 0);
    touch.addAction(finger.createPointerMove(Duration.ZERO, PointerInput.Origin.viewport(), x, y));
    touch.addAction(finger.createPointerDown(PointerInput.MouseButton.LEFT.asArg()));
    touch.addAction(new org.openqa.selenium.interactions.Pause(finger, down));
    touch.addAction(finger.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));
    ((Interactive) driver).perform(List.of(touch));
  }

  /** A picture of what is in view. */
  void picture(Path file) {
    try {
      Files.createDirectories(Objects.requireNonNull(file.getParent()));
      Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the browser's console says went wrong. */
  List<String> complaints() {
    return driver.manage().logs().get("browser").getAll().stream()
        .filter(line -> line.getLevel().intValue() >= java.util.logging.Level.SEVERE.intValue())
        .map(line -> line.getMessage())
        .toList();
  }

  /** The same phone, switched off and on again: what it keeps on its disk is there. */
  PhoneBrowser again(int width, int height) {
    close();
    return new PhoneBrowser(profile, width, height);
  }

  @Override
  public void close() {
    driver.quit();
  }
}
