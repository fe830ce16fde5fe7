package io.github.tiderule.format.fhir;

import io.github.tiderule.format.cycle.UnitSpelling;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.Shown;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.fact.assay.Unit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A value with its comparator and unit, as the fields a cycle file has for them.
 *
 * @param found the fields; without a unit where no UCUM code is given
 * @param places where each of them stands
 */
record Quantity(Map<String, Node> found, Map<String, Pointer> places) {

  private static final int CODE = 100;

  /**
   * Reads one.
   *
   * @param fields its fields
   * @param written the same, as they were written
   * @param analyte what was measured
   */
  static Quantity read(Fields fields, Node.@Nullable Members written, Analyte analyte) {
    Quantity quantity = new Quantity(new LinkedHashMap<>(), new LinkedHashMap<>());
    quantity.readAll(fields, written == null ? null : written.byKey().get("value"), analyte);
    return quantity;
  }

  private void readAll(Fields quantity, @Nullable Node node, Analyte analyte) {
    Field value = quantity.required("value");
    places.put("value", value.at());
    String written = null;
    if (node instanceof Node.Digits digits) {
      written = digits.written();
      found.put("value", digits);
    } else if (value.isPresent() && node != null) {
      value.refuse(ProblemCode.NOT_A_NUMBER, "value is " + Shown.of(node) + ", not a number");
    }
    String comparator = comparator(quantity.optional("comparator"));
    Field printed = quantity.optional("unit");
    String words = printed.text(CODE);
    Unit unit = unit(quantity, analyte);
    Unit said = words == null ? null : UnitSpelling.of(words).orElse(null);
    if (words != null && unit != null && said != null && unit.toNgPerMl(1) != said.toNgPerMl(1)) {
      printed.refuse(
          ProblemCode.WRONG_TYPE,
          "unit is " + Shown.quoted(words) + ", and code says " + unit.word(),
          "Ask the laboratory which of the two it is.");
    }
    if (written != null) {
      // a code is a program's word; only what is printed beside the number is the result's own
      String shown = words == null ? "" : " " + words;
      found.put("asReported", new Node.Text(comparator + written + shown));
    }
  }

  /** The sign as the laboratory printed it. */
  private String comparator(Field field) {
    places.put("comparator", field.at());
    String text = field.anyText();
    if (text == null) {
      return "";
    }
    switch (text) {
      // of a value that can be anything, the limit itself has no weight
      case "<", "<=" -> found.put("comparator", new Node.Text("<"));
      case ">", ">=" -> found.put("comparator", new Node.Text(">"));
      default ->
          field.refuse(
              ProblemCode.UNKNOWN_WORD,
              "comparator is " + Shown.quoted(text),
              "It can be <, <=, > or >=.");
    }
    return text;
  }

  private @Nullable Unit unit(Fields quantity, Analyte analyte) {
    Field code = quantity.optional("code");
    places.put("unit", code.at());
    String text = code.text(CODE);
    if (text == null) {
      return null;
    }
    Field system = quantity.required("system");
    String of = system.anyText();
    if (of == null) {
      return null;
    }
    if (!of.equals(Ucum.SYSTEM)) {
      system.refuse(
          ProblemCode.UNKNOWN_WORD,
          "system is " + Shown.quoted(of) + ", so what its code means is not known",
          "Units are read as UCUM has them, " + Ucum.SYSTEM + ".");
      return null;
    }
    Unit unit = Ucum.unit(text).orElse(null);
    if (unit == null) {
      code.refuse(
          ProblemCode.UNKNOWN_WORD,
          "code is " + Shown.quoted(text) + ", which is no unit known here",
          "It can be ng/mL, ug/L or nmol/L. No other unit is converted, and none is guessed.");
      return null;
    }
    if (!analyte.has(unit)) {
      code.refuse(
          ProblemCode.WRONG_TYPE,
          "code is "
              + Shown.quoted(text)
              + ", and LOINC "
              + analyte.code()
              + " is "
              + analyte.display(),
          "One of the two is wrong. Ask the laboratory which.");
      return null;
    }
    found.put("unit", new Node.Text(unit.word()));
    return unit;
  }
}
