package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.problem.Problem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What somebody typed into a form, and what is wrong with it. */
public final class Typed {

  /**
   * Something wrong.
   *
   * @param field the name of the field it is about
   * @param text what is wrong and how to mend it
   * @param readings what it may mean, to choose from; empty where that is not the trouble
   */
  public record Fault(String field, String text, List<String> readings) {

    public Fault {
      readings = List.copyOf(readings);
    }
  }

  /** Where a fault stands that is about no field. */
  public static final String NO_FIELD = "form";

  private final Map<String, List<String>> values;
  private final Map<String, Fault> faults = new LinkedHashMap<>();

  private Typed(Map<String, List<String>> values) {
    this.values = new LinkedHashMap<>(values);
  }

  /** What a form sent. */
  public static Typed of(Map<String, List<String>> values) {
    return new Typed(values);
  }

  /** A form nobody has filled in yet. */
  public static Typed nothing() {
    return new Typed(Map.of());
  }

  /** Fills a field in for somebody. */
  public Typed fill(String name, @Nullable String value) {
    if (value != null) {
      values.put(name, List.of(value));
    }
    return this;
  }

  /** Fills a field of several values in. */
  public Typed fill(String name, List<String> all) {
    values.put(name, List.copyOf(all));
    return this;
  }

  /** The value of a field, without spaces around it; empty where there is none. */
  public String value(String name) {
    List<String> all = values.get(name);
    return all == null || all.isEmpty() ? "" : all.get(0).strip();
  }

  /** All values of a field. */
  public List<String> all(String name) {
    return values.getOrDefault(name, List.of());
  }

  /** Whether a list of rows has a row of that number, filled in or not. */
  public boolean hasRow(String list, int row) {
    String prefix = list + "-" + row + "-";
    return values.keySet().stream().anyMatch(name -> name.startsWith(prefix));
  }

  /** How many rows of a list to show: those there are, and some to fill in. */
  public int rows(String list, int least) {
    int rows = 0;
    while (hasRow(list, rows)) {
      rows++;
    }
    return Math.max(least, rows + 1);
  }

  /** Whether a field has a value among its values. */
  public boolean has(String name, String value) {
    return all(name).contains(value);
  }

  /** Whether a field is filled in. */
  public boolean has(String name) {
    return !value(name).isEmpty();
  }

  /** Whether any field whose name begins so is filled in. */
  public boolean hasAny(String prefix) {
    return values.keySet().stream().anyMatch(name -> name.startsWith(prefix) && has(name));
  }

  /** Says what is wrong with a field; what was said first stands. */
  public void refuse(String field, String text) {
    refuse(field, text, List.of());
  }

  /** Says that a field can be read in several ways. */
  public void refuse(String field, String text, List<String> readings) {
    faults.putIfAbsent(field, new Fault(field, text, readings));
  }

  /**
   * Says what the reader of cycle files found wrong with what was made of the form.
   *
   * @param texts have a plainer text for some kinds of problems
   */
  public void refuse(List<Problem> problems, Texts texts) {
    for (Problem problem : problems) {
      String field = field(problem.path());
      String key = "problem." + problem.code().word();
      String keyOfField = key + "." + field;
      String hint = problem.hint() == null ? "" : " " + problem.hint();
      refuse(
          field,
          texts.has(keyOfField)
              ? texts.say(keyOfField)
              : texts.has(key) ? texts.say(key) : problem.message() + hint);
    }
  }

  /**
   * The field of a form for a place in a document: rows keep their number; the name of the part
   * goes, unless the form has it; a value in a list is in the field of the list.
   */
  private String field(String path) {
    String[] steps = path.split("/", -1);
    String last = steps[steps.length - 1];
    String before = steps.length >= 3 ? steps[steps.length - 2] : "";
    if (last.isEmpty()) {
      return NO_FIELD;
    }
    if (steps.length >= 3 && before.matches("\\d+")) {
      return steps[steps.length - 3] + "-" + before + "-" + last;
    }
    if (steps.length >= 2 && last.matches("\\d+")) {
      return steps[steps.length - 2];
    }
    return values.containsKey(before + "-" + last) ? before + "-" + last : last;
  }

  /** What is wrong with a field. */
  public @Nullable Fault fault(String field) {
    return faults.get(field);
  }

  /** All that is wrong, in the order it was found. */
  public List<Fault> faults() {
    return List.copyOf(faults.values());
  }

  /** Whether nothing is wrong. */
  public boolean isGood() {
    return faults.isEmpty();
  }
}
