package blindlap.fault;

/**
 * A kind of problem that a user can cause and mend. Each constant of each implementing enum has one
 * sentence in the resource bundle of problems.
 */
public interface Fault {
  /** The constant's name, unique within its enum. */
  String name();
}
