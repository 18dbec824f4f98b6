/**
 * Do the documents hold together: citations, links, commands, and a word about every room? Reads
 * files and knows no class of the program, so that it stays when rooms move.
 */
package blindlap.docs;
