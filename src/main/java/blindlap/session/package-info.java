/**
 * What has happened, and what may happen next? Facts in the past tense, the state folded from them,
 * and commands that answer with new facts or a refusal. Two notebooks' facts are merged by the same
 * folding. The ports to what keeps them are here: notebook and notebook files.
 *
 * <p>Store, exchange, desk, review and whatever shows a day come in. Never here: a fact changed or
 * removed, a file or a database, a clock that was not handed in, a conclusion about setups.
 */
package blindlap.session;
