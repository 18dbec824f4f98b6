package blindlap.plan;

import java.util.List;

/**
 * Starting sets in trade words, to be changed at will: what a kind of component usually has to set,
 * and what is usually noted about a lap.
 *
 * @param components kinds of components
 * @param measures usual measures
 */
public record Starter(List<Component> components, List<Measure> measures) {

  /**
   * A kind of component.
   *
   * @param name such as "rear shock with coil"
   * @param settings its usual settings, without values
   * @param cautions what to look out for
   */
  public record Component(String name, List<Setting> settings, List<String> cautions) {
    public Component {
      settings = List.copyOf(settings);
      cautions = List.copyOf(cautions);
    }
  }

  public Starter {
    components = List.copyOf(components);
    measures = List.copyOf(measures);
  }
}
