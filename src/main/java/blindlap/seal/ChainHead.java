package blindlap.seal;

/**
 * The last entry of one chain, as the review's fingerprint names it.
 *
 * @param notebookId whose chain
 * @param number the entry's number in that chain
 * @param hash the entry's hash
 */
public record ChainHead(String notebookId, long number, Fingerprint hash) {}
