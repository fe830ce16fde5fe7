package io.github.tiderule.api.page.form;

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
   */
  public record Fault(String field, String text) {}

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

  /** Whether a field has a value among its values. */
  public boolean has(String name, String value) {
    return all(name).contains(value);
  }

  /** Whether a field is filled in. */
  public boolean has(String name) {
    return !value(name).isEmpty();
  }

  /** Says what is wrong with a field; what was said first stands. */
  public void refuse(String field, String text) {
    faults.putIfAbsent(field, new Fault(field, text));
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
