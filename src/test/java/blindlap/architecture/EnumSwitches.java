package blindlap.architecture;

import com.sun.source.tree.CaseTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.SwitchExpressionTree;
import com.sun.source.tree.SwitchTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.TreeScanner;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Switches over enums of the application that a new constant could slip through: those with a
 * default, and statements that pass a constant over, which javac 17 lets compile. Trees know no
 * types, so that a switch is taken to be over an enum if one of ours has all its labels.
 */
final class EnumSwitches {
  private final Sources sources;
  private final List<Set<String>> enums = new ArrayList<>();
  private final List<String> leaky = new ArrayList<>();
  private int seen;

  private EnumSwitches(Sources sources) {
    this.sources = sources;
    sources.units().forEach(unit -> new Enums().scan(unit, null));
    sources.units().forEach(unit -> new Switches(unit).scan(unit, null));
  }

  /** One sentence for each switch that a new constant could slip through. */
  static List<String> leaky(Sources sources) {
    return List.copyOf(new EnumSwitches(sources).leaky);
  }

  /** Number of switches over enums of these sources. */
  static int count(Sources sources) {
    return new EnumSwitches(sources).seen;
  }

  private final class Enums extends TreeScanner<Void, Void> {
    @Override
    public Void visitClass(ClassTree type, Void nothing) {
      if (type.getKind() == Tree.Kind.ENUM) {
        Set<String> constants = new LinkedHashSet<>();
        for (Tree member : type.getMembers()) {
          if (member instanceof VariableTree field && isConstant(field, type)) {
            constants.add(field.getName().toString());
          }
        }
        enums.add(constants);
      }
      return super.visitClass(type, nothing);
    }

    /** Only a constant of an enum is made by calling the enum's constructor. */
    private boolean isConstant(VariableTree field, ClassTree type) {
      return field.getInitializer() instanceof NewClassTree made
          && made.getIdentifier().toString().equals(type.getSimpleName().toString());
    }
  }

  private final class Switches extends TreeScanner<Void, Void> {
    private final CompilationUnitTree unit;

    Switches(CompilationUnitTree unit) {
      this.unit = unit;
    }

    @Override
    public Void visitSwitch(SwitchTree tree, Void nothing) {
      check(tree, tree.getCases(), true);
      return super.visitSwitch(tree, nothing);
    }

    @Override
    public Void visitSwitchExpression(SwitchExpressionTree tree, Void nothing) {
      check(tree, tree.getCases(), false);
      return super.visitSwitchExpression(tree, nothing);
    }

    private void check(Tree tree, List<? extends CaseTree> cases, boolean statement) {
      Set<String> labels = new LinkedHashSet<>();
      boolean hasDefault = false;
      for (CaseTree each : cases) {
        hasDefault |= each.getExpressions().isEmpty();
        for (ExpressionTree label : each.getExpressions()) {
          labels.add(label instanceof IdentifierTree name ? name.getName().toString() : "");
        }
      }
      List<Set<String>> over =
          labels.isEmpty()
              ? List.of()
              : enums.stream().filter(constants -> constants.containsAll(labels)).toList();
      if (over.isEmpty()) {
        return;
      }
      seen++;
      if (hasDefault) {
        tell(tree, "has a default");
      } else if (statement && over.stream().noneMatch(labels::equals)) {
        Set<String> left = new LinkedHashSet<>(over.get(0));
        left.removeAll(labels);
        tell(tree, "passes over " + String.join(", ", left));
      }
    }

    private void tell(Tree tree, String what) {
      long line = unit.getLineMap().getLineNumber(sources.positions().getStartPosition(unit, tree));
      leaky.add(
          "%s:%d: a switch over an enum %s".formatted(unit.getSourceFile().getName(), line, what));
    }
  }
}
