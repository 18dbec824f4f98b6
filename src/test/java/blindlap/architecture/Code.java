package blindlap.architecture;

import blindlap.Main;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/** Compiled classes to hold against the rules; each set is read once. */
final class Code {
  /** Root package of the application. */
  static final String APPLICATION = "blindlap";

  /** Root package of the broken copy. */
  static final String BROKEN = "fixture.blindlap";

  private Code() {}

  /** The application's classes, without any test. */
  static JavaClasses application() {
    return Application.CLASSES;
  }

  /** Classes that break the rules, one or more for each. */
  static JavaClasses broken() {
    return Broken.CLASSES;
  }

  /** The class files below a folder. */
  static JavaClasses at(Path folder) {
    return new ClassFileImporter().importPath(folder);
  }

  /** Sources compiled into a folder: texts by the qualified names of their classes. */
  static JavaClasses compiled(Path folder, Map<String, String> sources) {
    List<JavaFileObject> files = new ArrayList<>();
    sources.forEach((name, text) -> files.add(new Source(name, text)));
    List<String> options = List.of("-proc:none", "-d", folder.toString());
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    if (!compiler.getTask(null, null, null, options, null, files).call()) {
      throw new IllegalArgumentException("the sources do not compile");
    }
    return at(folder);
  }

  private static final class Source extends SimpleJavaFileObject {
    private final String text;

    Source(String name, String text) {
      super(URI.create("text:///" + name.replace('.', '/') + ".java"), Kind.SOURCE);
      this.text = text;
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return text;
    }
  }

  /** The package of a class relative to the root; empty for the root itself. */
  static String part(String root, JavaClass type) {
    String name = type.getPackageName();
    return name.equals(root) ? "" : name.substring(root.length() + 1);
  }

  /** True if the class lives in the root package or below it. */
  static boolean under(String root, JavaClass type) {
    return (type.getPackageName() + ".").startsWith(root + ".");
  }

  /** The name of the top-level class around a class or array of it, relative to the root. */
  static String topLevel(String root, JavaClass type) {
    String plain = type.getName().replaceFirst("^\\[+L", "").replace(";", "");
    String name = plain.substring(root.length() + 1);
    int nested = name.indexOf('$');
    return nested < 0 ? name : name.substring(0, nested);
  }

  private static Path homeOf(Class<?> type) {
    try {
      return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static final class Application {
    static final JavaClasses CLASSES =
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPath(homeOf(Main.class));
  }

  private static final class Broken {
    static final JavaClasses CLASSES = at(homeOf(Code.class).resolve("fixture"));
  }
}
