/**
 * Which order will be ridden, who may know it, and how is it shown later that nobody changed it?
 * Draws and seals the order, opens the key, keeps the helper's records, makes fingerprints. Every
 * byte is described in docs/sealing.md.
 *
 * <p>Session and the rooms that a listed reason lets hold a key come in. The order is drawn behind
 * one interface here and nowhere else. Never here: a secret in {@code toString}, a source of chance
 * or time of its own, a place to store anything, a page.
 */
package blindlap.seal;
