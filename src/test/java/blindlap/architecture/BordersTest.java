package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import fixture.blindlap.plan.ReadsTheOutsideWorld;
import fixture.blindlap.screen.ride.ShowsTheKeyPage;
import fixture.blindlap.stats.order.Prints;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BordersTest {
  /** The class at which a violation lies: the first one its text names in pointed brackets. */
  private static final Pattern ORIGIN = Pattern.compile("<(fixture(?:\\.[a-z]+)+\\.[A-Z]\\w*)");

  @TestFactory
  Stream<DynamicTest> theApplicationKeepsEveryBorder() {
    return Borders.all().stream()
        .map(
            border ->
                DynamicTest.dynamicTest(
                    border.sentence(), () -> border.check(Code.APPLICATION, Code.application())));
  }

  @TestFactory
  Stream<DynamicTest> everyBorderNamesTheClassesThatBreakIt() {
    return Borders.all().stream()
        .map(
            border ->
                DynamicTest.dynamicTest(
                    border.sentence(),
                    () -> assertThat(named(border)).containsAll(names(border.broken()))));
  }

  @TestFactory
  Stream<DynamicTest> noBorderNamesAClassThatOnlyComesClose() {
    return Borders.all().stream()
        .filter(border -> !border.spared().isEmpty())
        .map(
            border ->
                DynamicTest.dynamicTest(
                    border.sentence(),
                    () ->
                        assertThat(named(border))
                            .doesNotContainAnyElementsOf(names(border.spared()))));
  }

  @Test
  void everyMethodOfTheExampleThatReadsTheOutsideWorldIsNamed() {
    assertEveryMethodIsNamed(ReadsTheOutsideWorld.class, "handed in");
  }

  @Test
  void everyMethodOfTheExampleThatPrintsIsNamed() {
    assertEveryMethodIsNamed(Prints.class, "standard streams");
  }

  @Test
  void aRiderPageIsRefusedEvenIfSomebodyPutsItOnTheShortList() {
    String rider = ShowsTheKeyPage.class.getName();
    Border listed =
        Border.of(
            "a list with a rider page",
            root -> Blindness.shortList(root, Set.of("screen.ride.ShowsTheKeyPage")),
            ShowsTheKeyPage.class);
    assertThat(named(listed)).doesNotContain(rider);
    assertThat(named(border("has to do with itself"))).contains(rider);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ShowsTheKeyPage", "Zebra", "Helper", "A"})
  void aRiderPageIsRefusedWhateverItsName(String name, @TempDir Path folder) throws IOException {
    String page =
        Files.readString(
            Path.of("src/test/java/fixture/blindlap/screen/ride/ShowsTheKeyPage.java"));
    JavaClasses renamed =
        Code.compiled(
            folder,
            Map.of(
                "fixture.blindlap.screen.ride." + name,
                page.replace("ShowsTheKeyPage", name),
                "fixture.blindlap.seal.OpenKey",
                "package fixture.blindlap.seal; public final class OpenKey {}"));
    for (String words : List.of("has to do with itself", "however far one follows")) {
      assertThat(border(words).violations(Code.BROKEN, renamed))
          .anyMatch(line -> line.contains("fixture.blindlap.screen.ride." + name));
    }
  }

  @Test
  void everyClassOnTheShortListHasAReasonAndStillHoldsAKey() {
    assertThat(Blindness.MAY_NAME_THE_KEY.values()).noneMatch(String::isBlank);
    List<String> idle =
        Code.application().stream()
            .filter(
                type ->
                    Blindness.MAY_NAME_THE_KEY.containsKey(Code.topLevel(Code.APPLICATION, type)))
            .filter(JavaClass::isTopLevelClass)
            .filter(type -> !anyPartNamesTheKey(type))
            .map(JavaClass::getName)
            .toList();
    assertThat(idle).as("on the list without need").isEmpty();
  }

  @Test
  void theRulesAreHeldAgainstTheApplicationAndNoTest() {
    assertThat(Code.application().contain(blindlap.Main.class)).isTrue();
    assertThat(Code.application().contain(BordersTest.class)).isFalse();
    assertThat(Code.application().contain(Prints.class)).isFalse();
  }

  private static boolean anyPartNamesTheKey(JavaClass top) {
    String name = Code.topLevel(Code.APPLICATION, top);
    return Code.application().stream()
        .filter(type -> Code.topLevel(Code.APPLICATION, type).equals(name))
        .anyMatch(type -> Blindness.namesTheKey(Code.APPLICATION, type));
  }

  private static void assertEveryMethodIsNamed(Class<?> example, String words) {
    String all = String.join("\n", border(words).violations(Code.BROKEN, Code.broken()));
    for (Method method : example.getDeclaredMethods()) {
      if (!method.isSynthetic()) {
        assertThat(all).contains("<" + example.getName() + "." + method.getName() + "(");
      }
    }
  }

  private static Border border(String words) {
    return Borders.all().stream()
        .filter(border -> border.sentence().contains(words))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> named(Border border) {
    return border.violations(Code.BROKEN, Code.broken()).stream()
        .map(ORIGIN::matcher)
        .filter(Matcher::find)
        .map(matcher -> matcher.group(1))
        .distinct()
        .toList();
  }

  private static List<String> names(List<Class<?>> classes) {
    return classes.stream().map(Class::getName).toList();
  }
}
