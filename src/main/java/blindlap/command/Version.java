package blindlap.command;

import picocli.CommandLine.IVersionProvider;

/** The version of the program, as its jar says. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"blindlap " + blindlap.compute.Engine.version()};
  }
}
