package blindlap.architecture;

import com.sun.source.tree.BlockTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LambdaExpressionTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Lengths of methods and files, in lines of source. A method counts from its annotations to its
 * closing brace, with everything inside it; its comment does not count.
 */
final class Sizes {
  static final int MOST_LINES_OF_A_METHOD = 40;

  /** For one published algorithm kept whole. */
  static final int MOST_LINES_OF_A_METHOD_IN_STATS = 60;

  static final int MOST_LINES_OF_A_FILE = 400;

  private Sizes() {}

  /** One sentence for each file and method that is too long. */
  static List<String> tooLong(Sources sources) {
    List<String> found = new ArrayList<>();
    for (CompilationUnitTree unit : sources.units()) {
      long lines = text(unit).lines().count();
      if (lines > MOST_LINES_OF_A_FILE) {
        found.add(sentence(name(unit), 1, "the file", lines, MOST_LINES_OF_A_FILE));
      }
      new Methods(sources, unit, found).scan(unit, null);
    }
    return found;
  }

  private static String sentence(String file, long line, String what, long lines, int most) {
    return "%s:%d: %s has %d lines, at most %d are allowed"
        .formatted(file, line, what, lines, most);
  }

  private static String name(CompilationUnitTree unit) {
    return unit.getSourceFile().getName();
  }

  private static String text(CompilationUnitTree unit) {
    try {
      return unit.getSourceFile().getCharContent(true).toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Measures every method, initialiser block and lambda. */
  private static final class Methods extends TreeScanner<Void, Void> {
    private final Sources sources;
    private final CompilationUnitTree unit;
    private final List<String> found;
    private final int most;

    Methods(Sources sources, CompilationUnitTree unit, List<String> found) {
      this.sources = sources;
      this.unit = unit;
      this.found = found;
      String home = String.valueOf(unit.getPackageName());
      this.most =
          home.startsWith("blindlap.stats")
              ? MOST_LINES_OF_A_METHOD_IN_STATS
              : MOST_LINES_OF_A_METHOD;
    }

    @Override
    public Void visitClass(ClassTree type, Void nothing) {
      for (Tree member : type.getMembers()) {
        if (member instanceof BlockTree) {
          measure(member, "an initialiser");
        }
      }
      return super.visitClass(type, nothing);
    }

    @Override
    public Void visitMethod(MethodTree method, Void nothing) {
      boolean constructor = method.getName().contentEquals("<init>");
      measure(method, constructor ? "a constructor" : "method " + method.getName());
      return super.visitMethod(method, nothing);
    }

    @Override
    public Void visitLambdaExpression(LambdaExpressionTree lambda, Void nothing) {
      measure(lambda, "a lambda");
      return super.visitLambdaExpression(lambda, nothing);
    }

    private void measure(Tree tree, String what) {
      long first = line(sources.positions().getStartPosition(unit, tree));
      long last = line(sources.positions().getEndPosition(unit, tree));
      if (last - first + 1 > most) {
        found.add(sentence(name(unit), first, what, last - first + 1, most));
      }
    }

    private long line(long position) {
      return unit.getLineMap().getLineNumber(position);
    }
  }
}
