package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The sample a result was measured in, as a Specimen resource says it. What it says in words not
 * known here is left out.
 */
final class Sample {

  /** Code system of HL7's table 0487 of specimen types; the codes used are from memory. */
  static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0487";

  private static final Map<String, Specimen> TYPE_CODES =
      Map.of(
          "ser", Specimen.SERUM,
          "plas", Specimen.PLASMA,
          "bld", Specimen.WHOLE_BLOOD,
          "whole blood", Specimen.WHOLE_BLOOD);

  private Sample() {}

  /** Its type in table 0487. */
  static String code(Specimen specimen) {
    return switch (specimen) {
      case SERUM -> "SER";
      case PLASMA -> "PLAS";
      case WHOLE_BLOOD -> "BLD";
    };
  }

  /** Adds what it says to an observation's fields. */
  static void addTo(Map<String, Node> fields, Node.Members sample) {
    Concept.meant(Concept.words(sample.members("type")), Specimen.class, TYPE_CODES)
        .ifPresent(one -> fields.put("specimen", new Node.Text(one.word())));
    for (Node.Members container : sample.objects("container")) {
      Concept.meant(Concept.words(container.members("type")), Tube.class, Map.of())
          .ifPresent(one -> fields.putIfAbsent("tube", new Node.Text(one.word())));
    }
    List<Node> handling = new ArrayList<>();
    for (Node.Members condition : sample.objects("condition")) {
      Set<String> words = Concept.words(condition);
      Concept.meant(words, Handling.class, Map.of())
          .ifPresent(one -> handling.add(new Node.Text(one.word())));
    }
    if (!handling.isEmpty()) {
      fields.put("handling", new Node.Entries(handling));
    }
  }

  /** When it was taken, if it says so. */
  static @Nullable String takenAt(Node.Members sample) {
    Node.Members collection = sample.members("collection");
    return collection == null ? null : collection.text("collectedDateTime");
  }
}
