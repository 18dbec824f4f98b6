package blindlap;

import org.junit.jupiter.api.Test;

class MainTest {
  @Test
  void starts() {
    Main.main(new String[0]);
  }
}
