package blindlap.compute;

/** Which program computed a number. */
public final class Engine {
  private Engine() {}

  /** The version from the jar, or "development" where there is no jar. */
  public static String version() {
    String version = Engine.class.getPackage().getImplementationVersion();
    return version == null ? "development" : version;
  }
}
