package blindlap.session;

/**
 * Something to be done with each kind of fact of a day without a helper; a new kind does not
 * compile until every visitor has answered it.
 *
 * @param <R> the answer
 */
public interface OnePersonVisitor<R> {
  R setupShown(SetupShown fact);

  R stintMounted(StintMounted fact);

  R masksSealed(MasksSealed fact);

  R masksGuessed(MasksGuessed fact);

  R masksRead(MasksRead fact);

  R oneStintShown(OneStintShown fact);

  R oneStintAnswered(OneStintAnswered fact);
}
