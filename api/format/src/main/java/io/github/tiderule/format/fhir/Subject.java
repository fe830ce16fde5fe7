package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.Shown;
import io.github.tiderule.rules.fact.Female;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Whom an Observation is about.
 *
 * @param reference what the Observation refers to, which only its sender understands
 * @param told names and identifiers it tells of the subject
 */
record Subject(@Nullable String reference, Set<String> told) {

  static Subject of(Node.Members observation, FhirFile file) {
    Node.Members subject = observation.members("subject");
    Set<String> told = new LinkedHashSet<>();
    if (subject == null) {
      return new Subject(null, told);
    }
    String reference = subject.text("reference");
    add(told, subject.text("display"));
    addIdentifier(told, subject.members("identifier"));
    Node.Members patient = file.resolve(subject, observation);
    if (patient != null) {
      patient.objects("identifier").forEach(one -> addIdentifier(told, one));
      for (Node.Members name : patient.objects("name")) {
        add(told, name.text("text"));
        name.entries("given")
            .forEach(one -> add(told, one instanceof Node.Text t ? t.value() : null));
      }
    }
    return new Subject(reference, told);
  }

  private static void addIdentifier(Set<String> told, Node.@Nullable Members identifier) {
    add(told, identifier == null ? null : identifier.text("value"));
  }

  private static void add(Set<String> told, @Nullable String word) {
    if (word != null && !word.isBlank()) {
      told.add(word.strip());
    }
  }

  private boolean tells(@Nullable String name) {
    return name != null && told.stream().anyMatch(name::equalsIgnoreCase);
  }

  /**
   * Why it cannot be taken to be the female, if it cannot.
   *
   * @param wanted what the sender calls her, if a person said so
   * @param alone whether no other subject is in the file
   */
  Optional<String> against(Female female, @Nullable String wanted, boolean alone) {
    if (wanted != null) {
      return wanted.equals(reference) || tells(wanted)
          ? Optional.empty()
          : Optional.of("it is about " + words() + ", not about " + Shown.quoted(wanted));
    }
    if (tells(female.id()) || tells(female.name())) {
      return Optional.empty();
    }
    if (told.isEmpty() && (reference == null || alone)) {
      return Optional.empty();
    }
    return Optional.of("it is about " + words() + ", and the season is not known to be hers");
  }

  private String words() {
    List<String> all = Stream.concat(told.stream(), Stream.ofNullable(reference)).toList();
    return all.isEmpty()
        ? "nobody named"
        : String.join(", ", all.stream().map(Shown::quoted).toList());
  }
}
