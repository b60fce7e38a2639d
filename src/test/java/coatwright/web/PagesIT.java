package coatwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.outlook.Due;
import coatwright.outlook.Outlook;
import coatwright.review.Why;
import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.logging.Level;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The pages as a person meets them, in a real browser; pictures are kept in target/screens. */
class PagesIT {
  private static final Path SCREENS = Path.of("target", "screens");
  private static ChromeDriver browser;

  private WebFixture shop;

  @BeforeAll
  static void openTheBrowser() throws IOException {
    Files.createDirectories(SCREENS);
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    browser =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(new java.io.File("/usr/bin/chromedriver"))
                .build(),
            options);
  }

  @AfterAll
  static void closeTheBrowser() {
    browser.quit();
  }

  @BeforeEach
  void openTheShop() {
    shop = new WebFixture();
    browser.manage().logs().get(LogType.BROWSER);
    look(1280, 800, "light");
  }

  @AfterEach
  void closeTheShop() {
    closeWindowsLeftOpen();
    browser.get("about:blank");
    shop.close();
  }

  /** The check for accessibility leaves one behind when it fails, and that one keeps asking. */
  private static void closeWindowsLeftOpen() {
    List<String> windows = new ArrayList<>(browser.getWindowHandles());
    for (String further : windows.subList(1, windows.size())) {
      browser.switchTo().window(further).close();
    }
    browser.switchTo().window(windows.get(0));
  }

  private static void look(int width, int height, String scheme) {
    Map<String, Object> size = new HashMap<>();
    size.put("width", width);
    size.put("height", height);
    size.put("deviceScaleFactor", 1);
    size.put("mobile", width < 600);
    browser.executeCdpCommand("Emulation.setDeviceMetricsOverride", size);
    browser.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "features",
            List.of(
                Map.of("name", "prefers-color-scheme", "value", scheme),
                Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
  }

  private void open(String path) {
    open(shop.address(), path);
  }

  private static void open(String address, String path) {
    browser.get(address + path);
    String ready =
        path.startsWith("/air")
            ? "table"
            : path.startsWith("/due") ? "pieces" : path.startsWith("/why") ? "facts" : "rooms";
    waitUntil(
        "the page shows the shop",
        () -> !browser.findElements(By.cssSelector("#" + ready + " > *")).isEmpty());
    if (ready.equals("rooms") || ready.equals("table")) {
      waitUntil(
          "the chart is drawn",
          () -> !browser.findElements(By.cssSelector("#chart canvas")).isEmpty());
    }
  }

  private static void waitUntil(String what, java.util.function.BooleanSupplier done) {
    new WebDriverWait(browser, Duration.ofSeconds(20))
        .withMessage(what)
        .until(driver -> done.getAsBoolean());
  }

  /** Has the page note when a text is first seen in an element; the driver itself is too slow. */
  private static void watchFor(String id, String wanted) {
    browser.executeScript(
        """
        const [id, wanted] = arguments;
        const element = document.getElementById(id);
        window.seenAt = 0;
        const look = () => {
          if (window.seenAt === 0 && element.textContent.includes(wanted)) window.seenAt = Date.now();
        };
        new MutationObserver(look).observe(element, {
          subtree: true, childList: true, characterData: true,
        });
        """,
        id,
        wanted);
  }

  private static Duration sinceSeen(long publishedMs) {
    waitUntil("it is seen", () -> seenAtMs() > 0);
    return Duration.ofMillis(seenAtMs() - publishedMs);
  }

  private static long seenAtMs() {
    return ((Number) browser.executeScript("return window.seenAt")).longValue();
  }

  private static String text(String id) {
    return browser.findElement(By.id(id)).getText();
  }

  private static void picture(String name) {
    Object height = browser.executeScript("return document.documentElement.scrollHeight");
    Map<String, Object> clip = new HashMap<>();
    clip.put("x", 0);
    clip.put("y", 0);
    clip.put("width", browser.executeScript("return innerWidth"));
    clip.put("height", height);
    clip.put("scale", 1);
    Map<String, Object> shot =
        browser.executeCdpCommand(
            "Page.captureScreenshot", Map.of("captureBeyondViewport", true, "clip", clip));
    try {
      Files.write(
          SCREENS.resolve(name + ".png"),
          OutputType.BYTES.convertFromBase64Png(String.valueOf(shot.get("data"))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> complaints() {
    return browser.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "now, /, 390, light",
    "now, /, 390, dark",
    "now, /, 1280, light",
    "now, /, 1280, dark",
    "air, /air, 390, light",
    "air, /air, 390, dark",
    "air, /air, 1280, light",
    "air, /air, 1280, dark",
    "due, /due, 390, light",
    "due, /due, 390, dark",
    "due, /due, 1280, light",
    "due, /due, 1280, dark",
    "why, /why?coat=e10, 390, light",
    "why, /why?coat=e10, 1280, dark"
  })
  void aPageIsReadableByEveryoneAtEverySizeAndLight(
      String name, String path, int width, String scheme) {
    look(width, width < 600 ? 844 : 800, scheme);
    open(path);
    picture(name + "-" + width + "-" + scheme);

    Results found = new AxeBuilder().analyze(browser);
    assertThat(found.getViolations())
        .as("accessibility")
        .map(rule -> rule.getId() + ": " + rule.getNodes())
        .isEmpty();
    assertThat((Long) browser.executeScript("return document.documentElement.scrollWidth"))
        .as("nothing stands out sideways")
        .isLessThanOrEqualTo(width);
    assertThat(complaints()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "24.5, 71, 17.0, hold off, Hold off",
    "22.0, 60, 18.5, take care, Take care",
    "20.0, 45, 20.0, brush, Brush"
  })
  void aReadingChangesThePageWithinASecond(
      double airC, double rhPct, double woodC, String summary, String word) {
    shop.reading(WebFixture.FINISHING, shop.clock.instant(), 21, 75, OptionalDouble.of(16.1));
    open("/");
    waitUntil("it stands otherwise first", () -> text("word").length() > 3);
    watchFor("rooms", airC + "");
    long publishedMs = System.currentTimeMillis();

    shop.reading(WebFixture.FINISHING, shop.clock.instant(), airC, rhPct, OptionalDouble.of(woodC));
    Duration tile = sinceSeen(publishedMs);
    waitUntil("the verdict follows", () -> text("word").equals(word));

    assertThat(tile).isLessThan(Duration.ofSeconds(1));
    assertThat(browser.findElement(By.id("verdict")).getDomAttribute("data-summary"))
        .isEqualTo(summary);
    assertThat(text("spoken")).startsWith(word);
    picture("now-" + summary.replace(' ', '-'));
    assertThat(complaints()).isEmpty();
  }

  @Test
  void aJumpIsShownWithinASecondBesideWhatIsBelievedAndGoesWhenTheNextAgrees() {
    open("/");
    String word = text("word");
    String believed = text("rooms");
    watchFor("doubt", "28.0");
    long publishedMs = System.currentTimeMillis();

    shop.jump(WebFixture.FINISHING, shop.clock.instant(), 28, 80);
    Duration shown = sinceSeen(publishedMs);

    assertThat(shown).isLessThan(Duration.ofSeconds(1));
    assertThat(text("doubt"))
        .startsWith("Just read 28.0\u202f°C, 80\u202f% by finishing room wall: a jump, waiting");
    assertThat(text("word")).isEqualTo(word);
    assertThat(text("rooms")).contains(believed.split("\n", 2)[0], "a jump, waiting");
    picture("now-in-doubt");
    Results found = new AxeBuilder().analyze(browser);
    assertThat(found.getViolations()).map(rule -> rule.getId() + ": " + rule.getNodes()).isEmpty();

    shop.reading(WebFixture.FINISHING, shop.clock.instant(), 28.1, 79, OptionalDouble.empty());
    waitUntil("the next agrees", () -> text("rooms").contains("28.1"));
    assertThat(browser.findElement(By.id("doubt")).isDisplayed()).isFalse();
    assertThat(complaints()).isEmpty();
  }

  @Test
  void aSilentRoomCantBeTold() {
    shop.clock.advance(Duration.ofMinutes(25));
    open("/");

    assertThat(text("word")).isEqualTo("Can't tell");
    assertThat(text("number")).contains("25");
    picture("now-cant-tell");
  }

  @Test
  void onePressWritesOneCoatAndUndoStrikesIt() {
    open("/");
    int before = shop.journal.coats().size();

    WebElement press = browser.findElement(By.id("coat-on"));
    press.click();
    press.click();
    waitUntil("it is read back", () -> text("coat-what").contains("written"));
    picture("now-coat-written");
    assertThat(shop.journal.coats()).hasSize(before + 1);

    browser.findElement(By.cssSelector("#written .undo")).click();
    waitUntil("it is struck", () -> shop.journal.coats().size() == before);
    assertThat(shop.journal.entries().get(shop.journal.entries().size() - 1).body().kind())
        .isEqualTo("strike");
    assertThat(complaints()).isEmpty();
  }

  @Test
  void thePressIsReachedAndMadeWithTheKeyboardAlone() {
    open("/");
    int before = shop.journal.coats().size();
    for (int i = 0; i < 40; i++) {
      WebElement focused = browser.switchTo().activeElement();
      if ("coat-on".equals(focused.getDomAttribute("id"))) {
        break;
      }
      focused.sendKeys(Keys.TAB);
    }
    WebElement focused = browser.switchTo().activeElement();
    assertThat(focused.getDomAttribute("id")).isEqualTo("coat-on");
    assertThat(focused.getCssValue("outline-style")).isEqualTo("solid");

    focused.sendKeys(Keys.ENTER);
    waitUntil("a coat is written", () -> shop.journal.coats().size() == before + 1);
  }

  @Test
  void fahrenheitIsOneClickAwayAndKept() {
    open("/");
    browser.findElement(By.cssSelector(".units input[value='F']")).click();

    assertThat(text("rooms")).contains("°F").doesNotContain("°C");
    open("/");
    assertThat(text("rooms")).contains("°F");
    picture("now-fahrenheit");
    browser.executeScript("localStorage.clear()");
  }

  @Test
  void aSentenceIsToldInTheDegreesChosenToo() {
    shop.reading(WebFixture.FINISHING, shop.clock.instant(), 24.5, 71, OptionalDouble.of(17));
    open("/");
    assertThat(text("reason")).containsPattern("stands -?[0-9.]+ K above the dew point");
    browser.findElement(By.cssSelector(".units input[value='F']")).click();

    assertThat(text("reason")).containsPattern("stands -?[0-9.]+ °F above the dew point");
    assertThat(text("actions")).contains("Warm the wood by 5.4 °F before");
    assertThat(browser.findElement(By.id("assumptions")).getDomProperty("textContent"))
        .contains("Wet film taken as 3.0 mil, as usual");
    open("/why?coat=e10");
    assertThat(text("sentence")).contains("stood only 0.9 °F above the dew point");
    assertThat(text("counterfactuals")).contains("wood 9 °F warmer", "61.2 °F", "70.2 °F");
    open("/due");
    assertThat(text("pieces")).contains("two nights below 59 °F in the bench room");
    browser.executeScript("localStorage.clear()");
    assertThat(complaints()).isEmpty();
  }

  @ParameterizedTest(name = "{0}: {3} {4} {5}")
  @CsvSource({
    "too-tacky, 16, min, 16, min, of rest still needed",
    "limits, 5, degC, 5.0, °C, is the least for this finish; the air is below it",
    "weak-spirit, 85, %, 85.0, %, strength of the spirit in the jar"
  })
  void theNumberThatDecidedIsTheOneNumberOnNow(
      String decidedBy, double value, String unit, String shown, String shownUnit, String what) {
    shop.outlooks.judged =
        o ->
            new Outlook(
                Outlook.Summary.HOLD_OFF,
                "As the shop says.",
                decidedBy,
                Optional.of(new Outlook.Deciding(value, unit, what)),
                o.clouding(),
                o.drying(),
                o.openTime(),
                o.cure(),
                o.milestones(),
                o.dryFilmUm(),
                o.assumptions(),
                o.actions(),
                o.cautions(),
                o.model());
    open("/");

    assertThat(text("number-value")).isEqualTo(shown);
    assertThat(text("number-unit")).isEqualTo(shownUnit);
    assertThat(text("number-caption")).isEqualTo(what);
    picture("now-" + decidedBy);
    look(390, 844, "dark");
    picture("now-" + decidedBy + "-390-dark");
    assertThat((Long) browser.executeScript("return document.documentElement.scrollWidth"))
        .isLessThanOrEqualTo(390);
    assertThat(complaints()).isEmpty();
  }

  private static OptionalDouble told(double value) {
    return OptionalDouble.of(value);
  }

  /** A finish that cures has no wet edge: its panel tells the pot, the wiping and what slows it. */
  @Test
  void nowTellsOfAFinishThatCuresWhatThereIsToKnowWhileItIsWet() {
    shop.outlooks.judged =
        o ->
            new Outlook(
                Outlook.Summary.TAKE_CARE,
                "The film would dry only 0.8 K above what its particles need.",
                "film-forming",
                Optional.empty(),
                o.clouding(),
                o.drying(),
                Optional.empty(),
                Optional.of(
                    new Outlook.Cure(
                        told(2),
                        told(0.8),
                        told(15),
                        told(30),
                        List.of("The film would dry only 0.8 K above what its particles need."))),
                o.milestones(),
                o.dryFilmUm(),
                o.assumptions(),
                o.actions(),
                o.cautions(),
                o.model());
    open("/");

    assertThat(text("number-value")).isEqualTo("0.8");
    assertThat(text("number-caption")).isEqualTo("above what its particles need to flow together");
    assertThat(text("open-time"))
        .contains("While it is wet")
        .contains("slow cure")
        .contains("Mixed pot workable")
        .contains("Wipe off after");
    picture("now-cure");
    look(390, 844, "dark");
    picture("now-cure-390-dark");
    assertThat((Long) browser.executeScript("return document.documentElement.scrollWidth"))
        .isLessThanOrEqualTo(390);
    assertThat(complaints()).isEmpty();
  }

  @Test
  void whyClearsTheAirHalfWhereCloudingWasPossibleAndMarksWhatWouldNotHaveHelped() {
    shop.reviewed =
        why ->
            new Why(
                why.coat(),
                why.part(),
                "The air was hardly the cause: its water stayed under what the resin holds.",
                Why.AirAtFault.NO,
                why.air(),
                why.gaps(),
                Optional.of(
                    new Why.Saw(
                        "fixture", "1", "possible", told(12), told(15), 14, 12, 3, told(0))),
                List.of(
                    new Why.Counterfactual(
                        "air dried", "60 %", "50 %", "none expected", told(10), told(16), true),
                    new Why.Counterfactual(
                        "a heavier coat",
                        "75 µm",
                        "100 µm",
                        "possible",
                        told(13),
                        told(15),
                        false)),
                why.jar(),
                why.cautions());
    open("/why?coat=e10");

    assertThat(text("blame")).isEqualTo("The air was hardly the cause.");
    List<WebElement> rows = browser.findElements(By.cssSelector("#counterfactuals tr"));
    assertThat(rows.get(0).getText()).contains("none expected").doesNotContain("no help");
    assertThat(rows.get(1).getText()).contains("possible, no help");
    assertThat(complaints()).isEmpty();
  }

  @Test
  void whenTheLineIsDownThePageSaysSinceWhen() {
    open("/");
    shop.server.close();

    waitUntil("it says so", () -> text("cut-off").startsWith("Not connected since"));
    picture("now-cut-off");
  }

  @Test
  void nothingNeedsDoingIsSaid() {
    shop.warnings.clear();
    shop.outlooks.expect(
        List.of(
            WebFixture.due(
                shop.clock.instant(), "wall cabinet/left door", "rub out", 60, 96, 180)));
    open("/");

    assertThat(text("nothing")).isEqualTo("Nothing needs doing.");
    assertThat(text("next-up")).contains("left door", "rub out");
  }

  @Test
  void dueSaysWhatWillNotGetThereAndWhatMoved() {
    open("/due");

    assertThat(text("lead"))
        .contains("Will not get there in this air: stools \u203a first (rub out)");
    assertThat(text("pieces"))
        .contains("two nights below 15 °C in the bench room")
        .contains("Will not get there in this air: the bench room has stood at 68 %");
    assertThat(text("tests")).contains("Touch it, then sand a corner");
  }

  @Test
  void dueKeepsApartWhatCannotBeToldFromWhatWillNotGetThere() {
    shop.outlooks.expect(
        List.of(
            new Due(
                "stools/second",
                "rub out",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of("nobody measured the air in the bench room that day"),
                Optional.empty(),
                false,
                false,
                true)));
    open("/due");

    assertThat(text("lead")).isEqualTo("Can't tell of: stools \u203a second (rub out).");
    assertThat(text("pieces")).contains("Can't tell: nobody measured the air");
    picture("due-cant-tell");
    look(390, 844, "dark");
    picture("due-cant-tell-390-dark");
    assertThat(complaints()).isEmpty();
  }

  @Test
  void whySaysTheSentenceFirstThenTheEvidenceThenTheMinutes() {
    open("/why?coat=e10");

    assertThat(text("sentence")).startsWith("The film clouded because");
    assertThat(text("blame")).isEqualTo("The air was the cause.");
    assertThat(text("counterfactuals")).contains("wood 5 K warmer", "none expected");
    assertThat(browser.findElements(By.cssSelector("#minutes tr"))).hasSize(121);
  }

  @ParameterizedTest
  @CsvSource({
    "now, /, 1280",
    "now, /, 390",
    "due, /due, 1280",
    "why, /why?coat=cabinet/back, 1280"
  })
  void thePagesShowTheShopsOwnRooms(String name, String path, int width) {
    try (RealShop real = new RealShop()) {
      look(width, 800, "light");
      open(real.address(), path);
      picture("real-" + name + "-" + width);

      assertThat((Long) browser.executeScript("return document.documentElement.scrollWidth"))
          .isLessThanOrEqualTo(width);
      assertThat(complaints()).isEmpty();
      browser.get("about:blank");
    }
  }

  @Test
  void aPageAsksNoOtherHost() {
    open("/");
    @SuppressWarnings("unchecked")
    List<String> asked =
        (List<String>)
            browser.executeScript(
                "return performance.getEntriesByType('resource').map((one) => one.name)");

    assertThat(asked).isNotEmpty().allMatch(name -> name.startsWith(shop.address()));
  }
}
