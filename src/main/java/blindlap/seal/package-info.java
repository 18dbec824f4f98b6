/** Draws and seals the order, opens the key, keeps the helper's records, makes fingerprints. */
package blindlap.seal;
