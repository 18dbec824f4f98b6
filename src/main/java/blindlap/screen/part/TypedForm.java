package blindlap.screen.part;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;

/**
 * One object of a plan file as it is being typed: fields, parts and lists of parts, each with what
 * is wrong with it. Nothing typed is changed or lost, whether it makes sense or not.
 */
public final class TypedForm {
  /** Lists of numbers for which a plan has one line; any other stays a list, line by line. */
  private static final Set<String> IN_ONE_LINE = Set.of("levels", "looks");

  private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:[.,]\\d+)?");

  private final Map<String, Entry> entries = new LinkedHashMap<>();
  private final Map<String, TypedForm> parts = new LinkedHashMap<>();
  private final Map<String, ObservableList<TypedForm>> lists = new LinkedHashMap<>();
  private final Runnable changed;

  /**
   * @param changed run after every change of a field or list
   */
  public TypedForm(Runnable changed) {
    this.changed = changed;
  }

  /** One field as typed, with what is wrong with it. */
  public static final class Entry {
    private final SimpleStringProperty text = new SimpleStringProperty("");
    private final ReadOnlyStringWrapper error = new ReadOnlyStringWrapper("");
    private final boolean lines;

    private Entry(boolean lines, Runnable changed) {
      this.lines = lines;
      text.addListener((o, before, now) -> changed.run());
    }

    /** The text as typed; several lines for a list of texts. */
    public StringProperty textProperty() {
      return text;
    }

    /** The text as typed. */
    public String get() {
      return text.get();
    }

    /** Types a text. */
    public void set(String typed) {
      text.set(typed);
    }

    /** What is wrong with it, a sentence; empty if nothing is. */
    public ReadOnlyStringProperty errorProperty() {
      return error.getReadOnlyProperty();
    }

    private @Nullable Object value() {
      return text.get().isBlank() ? null : lines ? linesOf(text.get()) : text.get();
    }

    private void become(@Nullable Object wanted) {
      if (!Objects.equals(value(), wanted)) {
        set(
            wanted == null
                ? ""
                : !(wanted instanceof List<?> each)
                    ? wanted.toString()
                    : lines ? joined(each) : inOneLine(each));
      }
    }
  }

  /** A field. */
  public Entry field(String name) {
    return entries.computeIfAbsent(name, key -> new Entry(false, changed));
  }

  /** A list of texts, one a line. */
  public Entry lines(String name) {
    return entries.computeIfAbsent(name, key -> new Entry(true, changed));
  }

  /** An object within this one. */
  public TypedForm part(String name) {
    return parts.computeIfAbsent(name, key -> new TypedForm(changed));
  }

  /** A list of objects. */
  public ObservableList<TypedForm> list(String name) {
    return lists.computeIfAbsent(
        name,
        key -> {
          ObservableList<TypedForm> list = FXCollections.observableArrayList();
          list.addListener((ListChangeListener<TypedForm>) change -> changed.run());
          return list;
        });
  }

  /** Adds an empty object to a list. */
  public TypedForm add(String list) {
    TypedForm form = new TypedForm(changed);
    list(list).add(form);
    return form;
  }

  /** Adds an object with these fields to a list. */
  public TypedForm add(String list, Map<String, ?> fields) {
    TypedForm form = new TypedForm(changed);
    form.fill(fields);
    list(list).add(form);
    return form;
  }

  /** The fields as a tree; what is blank is left out. */
  public Map<String, Object> tree() {
    Map<String, Object> tree = new LinkedHashMap<>();
    entries.forEach(
        (name, entry) -> {
          Object value = entry.value();
          if (value != null) {
            tree.put(name, value);
          }
        });
    parts.forEach(
        (name, part) -> {
          Map<String, Object> fields = part.tree();
          if (!fields.isEmpty()) {
            tree.put(name, fields);
          }
        });
    lists.forEach(
        (name, list) -> {
          if (!list.isEmpty()) {
            tree.put(name, list.stream().map(TypedForm::tree).toList());
          }
        });
    return tree;
  }

  private static List<String> linesOf(String text) {
    return text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }

  /** Replaces everything by a tree of fields. */
  public void fill(Map<String, ?> tree) {
    entries.values().forEach(entry -> entry.set(""));
    parts.values().forEach(part -> part.fill(Map.of()));
    lists.values().forEach(ObservableList::clear);
    tree.forEach(this::fill);
  }

  private void fill(String name, @Nullable Object value) {
    if (value instanceof Map<?, ?> map) {
      part(name).fill(texts(map));
    } else if (value instanceof List<?> list) {
      fillList(name, list);
    } else if (value != null) {
      Entry entry = entries.get(name);
      (entry == null ? field(name) : entry).set(String.valueOf(value));
    }
  }

  private void fillList(String name, List<?> list) {
    boolean objects = !list.isEmpty() && list.stream().allMatch(item -> item instanceof Map);
    if (!objects) {
      Entry entry = entries.get(name);
      if (entry == null) {
        entry = IN_ONE_LINE.contains(name) && numbers(list) ? field(name) : lines(name);
      }
      entry.set(entry.lines ? joined(list) : inOneLine(list));
      return;
    }
    List<TypedForm> forms = new ArrayList<>();
    for (Object item : list) {
      TypedForm form = new TypedForm(changed);
      form.fill(texts((Map<?, ?>) item));
      forms.add(form);
    }
    list(name).setAll(forms);
  }

  /** A field of one line would lose the breaks of its lines and run numbers together. */
  private static boolean numbers(List<?> list) {
    return !list.isEmpty()
        && list.stream().allMatch(item -> NUMBER.matcher(String.valueOf(item)).matches());
  }

  private static String inOneLine(List<?> list) {
    return String.join(", ", list.stream().map(String::valueOf).toList());
  }

  private static String joined(List<?> lines) {
    return String.join("\n", lines.stream().map(String::valueOf).toList());
  }

  /**
   * Goes over to a tree of fields, touching only what differs: what stays the same stays where it
   * is on the page, with what is being typed into it.
   */
  public void become(Map<String, ?> tree) {
    List<String> known = new ArrayList<>(entries.keySet());
    known.addAll(parts.keySet());
    known.addAll(lists.keySet());
    List.copyOf(entries.entrySet()).forEach(e -> e.getValue().become(tree.get(e.getKey())));
    List.copyOf(parts.entrySet())
        .forEach(
            e ->
                e.getValue()
                    .become(tree.get(e.getKey()) instanceof Map<?, ?> map ? texts(map) : Map.of()));
    List.copyOf(lists.entrySet())
        .forEach(
            e ->
                become(
                    e.getValue(), tree.get(e.getKey()) instanceof List<?> list ? list : List.of()));
    tree.forEach(
        (name, value) -> {
          if (!known.contains(name)) {
            fill(name, value);
          }
        });
  }

  private void become(ObservableList<TypedForm> list, List<?> wanted) {
    int most = Math.min(list.size(), wanted.size());
    int head = 0;
    while (head < most && list.get(head).tree().equals(wanted.get(head))) {
      head++;
    }
    int tail = 0;
    while (tail < most - head
        && list.get(list.size() - 1 - tail).tree().equals(wanted.get(wanted.size() - 1 - tail))) {
      tail++;
    }
    int own = list.size() - head - tail;
    int theirs = wanted.size() - head - tail;
    for (int i = 0; i < Math.min(own, theirs); i++) {
      list.get(head + i).become(texts((Map<?, ?>) wanted.get(head + i)));
    }
    if (own > theirs) {
      list.remove(head + theirs, head + own);
    }
    for (int i = own; i < theirs; i++) {
      TypedForm form = new TypedForm(changed);
      form.fill(texts((Map<?, ?>) wanted.get(head + i)));
      list.add(head + i, form);
    }
  }

  /** Every field with the path it has in a plan file, such as "setups[2].name". */
  public Map<Entry, String> paths() {
    Map<Entry, String> paths = new IdentityHashMap<>();
    paths("", paths);
    return paths;
  }

  private void paths(String within, Map<Entry, String> paths) {
    String before = within.isEmpty() ? "" : within + ".";
    entries.forEach((name, entry) -> paths.put(entry, before + name));
    parts.forEach((name, part) -> part.paths(before + name, paths));
    lists.forEach(
        (name, list) -> {
          for (int i = 0; i < list.size(); i++) {
            list.get(i).paths(before + name + "[" + (i + 1) + "]", paths);
          }
        });
  }

  private static Map<String, Object> texts(Map<?, ?> map) {
    Map<String, Object> fields = new LinkedHashMap<>();
    map.forEach((key, value) -> fields.put(String.valueOf(key), value));
    return fields;
  }

  /**
   * Puts sentences beside the fields they are about and takes them out of the map.
   *
   * @param path where this object stands, empty for the plan itself
   * @param sentences sentences by path such as "setups[1].name"
   */
  public void tell(String path, Map<String, String> sentences) {
    entries.forEach(
        (name, entry) -> {
          String own = path.isEmpty() ? name : path + "." + name;
          String sentence = sentences.remove(own);
          entry.error.set(sentence == null ? "" : sentence);
        });
    parts.forEach((name, part) -> part.tell(path.isEmpty() ? name : path + "." + name, sentences));
    lists.forEach(
        (name, list) -> {
          for (int i = 0; i < list.size(); i++) {
            String own = path.isEmpty() ? name : path + "." + name;
            list.get(i).tell(own + "[" + (i + 1) + "]", sentences);
          }
        });
  }
}
