package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A new constant of an enum does not compile until every switch has answered for it. */
class EnumSwitchesTest {
  private static final String ENUM =
      """
      package blindlap.plan;
      class Broken {
        enum Tyre { SLICK, MUD { int grip() { return 2; } }; static final Tyre USUAL = SLICK; int grip() { return 1; } }
      """;

  private static List<String> leaky(String members) {
    return EnumSwitches.leaky(Sources.of(ENUM + members + "}\n"));
  }

  @Test
  void noSwitchOfTheApplicationLetsAConstantSlipThrough() {
    assertThat(EnumSwitches.count(Sources.application())).isGreaterThan(20);
    assertThat(EnumSwitches.leaky(Sources.application())).isEmpty();
  }

  @Test
  void aSwitchExpressionWithADefaultIsNamedWithItsLine() {
    assertThat(leaky("int a(Tyre t) {\nreturn switch (t) { case MUD -> 1; default -> 0; };\n}\n"))
        .containsExactly("/Broken.java:5: a switch over an enum has a default");
  }

  @Test
  void aStatementWithADefaultIsNamedInEitherSpelling() {
    assertThat(leaky("void a(Tyre t) {\nswitch (t) { case MUD -> b(); default -> {} }\n}\n"))
        .containsExactly("/Broken.java:5: a switch over an enum has a default");
    assertThat(leaky("void a(Tyre t) {\nswitch (t) { case MUD: b(); break; default: }\n}\n"))
        .containsExactly("/Broken.java:5: a switch over an enum has a default");
  }

  @Test
  void aStatementThatPassesAConstantOverIsNamed() {
    assertThat(leaky("void a(Tyre t) {\nswitch (t) { case MUD -> b(); }\n}\n"))
        .containsExactly("/Broken.java:5: a switch over an enum passes over SLICK");
  }

  @Test
  void aSwitchThatAnswersForEveryConstantPasses() {
    assertThat(leaky("int a(Tyre t) { return switch (t) { case MUD -> 1; case SLICK -> 0; }; }\n"))
        .isEmpty();
    assertThat(leaky("void a(Tyre t) { switch (t) { case MUD, SLICK -> b(); } }\n")).isEmpty();
  }

  @Test
  void whatIsNoEnumOfOursMayHaveADefault() {
    assertThat(leaky("int a(String t) { return switch (t) { case \"MUD\" -> 1; default -> 0; }; }"))
        .isEmpty();
    assertThat(leaky("int a(int t) { return switch (t) { case 1 -> 1; default -> 0; }; }\n"))
        .isEmpty();
    assertThat(leaky("int a(Day t) { return switch (t) { case MONDAY -> 1; default -> 0; }; }\n"))
        .isEmpty();
    assertThat(leaky("void a(Tyre t) { switch (t) { default -> b(); } }\n")).isEmpty();
  }
}
