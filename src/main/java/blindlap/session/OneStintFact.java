package blindlap.session;

/** Facts of one stint without the helper. */
public sealed interface OneStintFact extends Fact.OfOnePerson
    permits OneStintShown, OneStintAnswered {}
