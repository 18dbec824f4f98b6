package blindlap.architecture;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** Source files as syntax trees; nothing is compiled. */
final class Sources {
  private static final Path MAIN = Path.of("src/main/java");

  private final List<CompilationUnitTree> units = new ArrayList<>();
  private final SourcePositions positions;

  private Sources(List<JavaFileObject> files) {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    JavacTask task =
        (JavacTask) compiler.getTask(null, null, null, List.of("-proc:none"), null, files);
    try {
      task.parse().forEach(units::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    positions = Trees.instance(task).getSourcePositions();
  }

  /** The application's sources. */
  static Sources application() {
    return Application.SOURCES;
  }

  /** One source given as text. */
  static Sources of(String text) {
    return new Sources(List.of(new Text(text)));
  }

  /** One tree for each file. */
  List<CompilationUnitTree> units() {
    return List.copyOf(units);
  }

  /** Where trees begin and end. */
  SourcePositions positions() {
    return positions;
  }

  private static Sources read() {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager manager =
            compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8);
        Stream<Path> files = Files.walk(MAIN)) {
      List<Path> java = files.filter(file -> file.toString().endsWith(".java")).sorted().toList();
      List<JavaFileObject> objects = new ArrayList<>();
      manager.getJavaFileObjectsFromPaths(java).forEach(objects::add);
      return new Sources(objects);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class Application {
    static final Sources SOURCES = read();
  }

  private static final class Text extends SimpleJavaFileObject {
    private final String text;

    Text(String text) {
      super(URI.create("text:///Broken.java"), Kind.SOURCE);
      this.text = text;
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return text;
    }
  }
}
