package blindlap.docs;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/**
 * The libraries that a start of the program has on its class path: what the POM of the project asks
 * for and what that brings along, read from the POMs that lie beside the jars. Tests have more on
 * theirs.
 */
final class RuntimeLibraries {
  /** As the POM names it, beside its jar. */
  record Library(String group, String artifact, String version, List<String> licences, Path jar) {
    String name() {
      return group + ":" + artifact;
    }
  }

  private static final Set<String> RUN = Set.of("compile", "runtime");

  private final Map<String, Path> poms = new TreeMap<>();
  private final Map<Path, Element> read = new HashMap<>();

  /**
   * @param classPath that of the tests, of jars in folders as Maven lays them out
   */
  RuntimeLibraries(String classPath) {
    for (String entry : classPath.split(File.pathSeparator)) {
      Path jar = Path.of(entry);
      Path version = jar.getParent();
      if (!entry.endsWith(".jar") || version == null || version.getParent() == null) {
        continue;
      }
      String artifact = version.getParent().getFileName().toString();
      Path pom = version.resolve(artifact + "-" + version.getFileName() + ".pom");
      if (Files.isRegularFile(pom)) {
        poms.put(group(pom) + ":" + artifact, pom);
      }
    }
  }

  /** By name, in the order of their names. */
  Collection<Library> broughtBy(Path project) {
    Map<String, Library> found = new TreeMap<>();
    Set<Path> seen = new HashSet<>();
    Deque<Path> open = new ArrayDeque<>(List.of(project));
    while (!open.isEmpty()) {
      Path pom = open.remove();
      for (String name : asked(pom, pom.equals(project))) {
        Path brought = poms.get(name);
        if (brought != null && seen.add(brought)) {
          open.add(brought);
          found.put(name, library(name, brought));
        }
      }
    }
    return found.values();
  }

  private Library library(String name, Path pom) {
    String[] parts = name.split(":");
    String version = pom.getParent().getFileName().toString();
    Path jar = pom.resolveSibling(parts[1] + "-" + version + ".jar");
    return new Library(parts[0], parts[1], version, licences(pom), jar);
  }

  /** Names of libraries that a POM, or one it inherits from, needs to run. */
  private List<String> asked(Path pom, boolean itself) {
    List<String> names = new ArrayList<>();
    List<Path> line = itself ? List.of(pom) : ancestry(pom);
    for (Path each : line) {
      for (Element wanted : children(child(root(each), "dependencies"), "dependency")) {
        String group = text(wanted, "groupId").replaceAll("\\$\\{.*groupId}", group(pom));
        String name = group + ":" + text(wanted, "artifactId");
        boolean optional = text(wanted, "optional").equals("true");
        if (!optional && RUN.contains(scope(wanted, name, line))) {
          names.add(name);
        }
      }
    }
    return names;
  }

  private String scope(Element wanted, String name, List<Path> line) {
    String own = text(wanted, "scope");
    if (!own.isEmpty()) {
      return own;
    }
    for (Path each : line) {
      Element managed = child(child(root(each), "dependencyManagement"), "dependencies");
      for (Element entry : children(managed, "dependency")) {
        String called = text(entry, "groupId") + ":" + text(entry, "artifactId");
        if (called.equals(name) && !text(entry, "scope").isEmpty()) {
          return text(entry, "scope");
        }
      }
    }
    return "compile";
  }

  /** Of the nearest POM of the line that names any. */
  private List<String> licences(Path pom) {
    for (Path each : ancestry(pom)) {
      List<Element> named = children(child(root(each), "licenses"), "license");
      if (!named.isEmpty()) {
        return named.stream().map(licence -> text(licence, "name")).toList();
      }
    }
    return List.of();
  }

  /** The POM and those it inherits from, the nearest first. */
  private List<Path> ancestry(Path pom) {
    List<Path> line = new ArrayList<>();
    for (Optional<Path> at = Optional.of(pom); at.isPresent(); at = parent(at.get())) {
      line.add(at.get());
    }
    return line;
  }

  private Optional<Path> parent(Path pom) {
    Element parent = child(root(pom), "parent");
    if (parent == null) {
      return Optional.empty();
    }
    // group folders, artifact, version, file
    int up = group(pom).split("\\.").length + 3;
    Path repository = pom;
    for (int i = 0; i < up; i++) {
      repository = repository.getParent();
    }
    String artifact = text(parent, "artifactId");
    String version = text(parent, "version");
    Path found =
        repository
            .resolve(text(parent, "groupId").replace('.', '/'))
            .resolve(artifact)
            .resolve(version)
            .resolve(artifact + "-" + version + ".pom");
    return Optional.of(found).filter(Files::isRegularFile);
  }

  private String group(Path pom) {
    String own = text(root(pom), "groupId");
    return own.isEmpty() ? text(child(root(pom), "parent"), "groupId") : own;
  }

  private Element root(Path pom) {
    return read.computeIfAbsent(pom, RuntimeLibraries::parsed);
  }

  private static Element parsed(Path pom) {
    try (InputStream in = Files.newInputStream(pom)) {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return factory.newDocumentBuilder().parse(in).getDocumentElement();
    } catch (IOException | ParserConfigurationException | SAXException e) {
      throw new IllegalStateException(pom.toString(), e);
    }
  }

  private static @Nullable Element child(@Nullable Element above, String name) {
    List<Element> found = children(above, name);
    return found.isEmpty() ? null : found.get(0);
  }

  private static List<Element> children(@Nullable Element above, String name) {
    List<Element> found = new ArrayList<>();
    Node each = above == null ? null : above.getFirstChild();
    for (; each != null; each = each.getNextSibling()) {
      if (each instanceof Element element && element.getTagName().equals(name)) {
        found.add(element);
      }
    }
    return found;
  }

  private static String text(@Nullable Element above, String name) {
    Element found = child(above, name);
    return found == null ? "" : found.getTextContent().strip().replaceAll("\\s+", " ");
  }
}
