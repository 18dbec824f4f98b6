package blindlap.session;

/**
 * The last known entry of a chain.
 *
 * @param notebook whose chain
 * @param number its number there
 * @param hash its hash
 */
public record Head(NotebookId notebook, long number, Hash hash) {}
