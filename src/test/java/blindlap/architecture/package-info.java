/**
 * Tests of the borders between packages (docs/adr/0001-packages-and-borders.md). Every rule takes
 * its root package, so that the same rule is run on the application and on the deliberately broken
 * copy under {@code fixture.blindlap}: a rule that cannot fail is noticed.
 */
package blindlap.architecture;
