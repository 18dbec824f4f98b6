package blindlap.plan;

/**
 * Who judges the values of a measure afterwards, from video or traces, by codes and in an order
 * that is not the ridden one: "scored by code". Since version 5.
 *
 * @param name of the person
 * @param knowsKey whether that person knows which stint was on which setup
 */
public record Assessor(String name, boolean knowsKey) {}
