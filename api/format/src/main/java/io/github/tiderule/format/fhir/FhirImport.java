package io.github.tiderule.format.fhir;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.laboratory.KnownResults;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds in a file of FHIR R4 Observations what is new for a season. Saves nothing. */
public final class FhirImport {

  private static final String ALONE = "/observations/0/";

  private final FhirFile file;
  private final CycleRecord cycle;
  private final String season;
  private final @Nullable String subject;
  private final KnownResults known;
  private final boolean oneSubject;

  private FhirImport(
      FhirFile file,
      CycleRecord cycle,
      String season,
      @Nullable String subject,
      Set<String> taken) {
    this.file = file;
    this.cycle = cycle;
    this.season = season;
    this.subject = subject;
    this.known = KnownResults.of(cycle, taken);
    this.oneSubject =
        file.parts().stream()
                .map(FhirFile.Part::observation)
                .filter(Objects::nonNull)
                .map(one -> Subject.of(one, file))
                .collect(Collectors.toSet())
                .size()
            <= 1;
  }

  /**
   * What would become of each Observation; empty, with problems noted, when the file cannot be used
   * at all.
   *
   * @param text one resource, a Bundle, or one resource on each line
   * @param season key of the season, as in the identifiers of its export
   * @param subject what the sender calls the female; absent where it uses her name or id
   * @param taken ids that no new observation may have, beside those of the season
   * @param where pointer to the file, for the problems of all of it
   */
  public static Optional<List<Found>> preview(
      String text,
      CycleRecord cycle,
      String season,
      @Nullable String subject,
      Set<String> taken,
      Pointer where,
      Problems problems) {
    FhirFile file = FhirFile.read(text, where, problems);
    if (!problems.none()) {
      return Optional.empty();
    }
    FhirImport work = new FhirImport(file, cycle, season, subject, taken);
    return Optional.of(file.parts().stream().map(work::found).toList());
  }

  private Found found(FhirFile.Part part) {
    Node.Members resource = part.observation();
    if (resource == null) {
      return Found.refused(part, part.problems());
    }
    Problems problems = new Problems();
    Subject.of(resource, file)
        .against(cycle.female(), subject, oneSubject)
        .ifPresent(
            words ->
                problems.add(
                    part.at().child("subject"),
                    ProblemCode.UNKNOWN_WORD,
                    words,
                    "If it is hers, say with subject what its sender calls her."));
    ObservationResource read =
        ObservationResource.read(resource, part.at(), file, cycle.zone(), problems);
    Status status = read.status();
    if (!problems.none() || status == null) {
      return Found.refused(part, problems.all());
    }
    List<String> ids = read.ids(season);
    Optional<Progesterone> before =
        ids.stream().map(known::named).flatMap(Optional::stream).findFirst();
    if (status.hasResult()) {
      return result(part, read, status, ids, before.orElse(null));
    }
    if (status == Status.ENTERED_IN_ERROR) {
      return before.map(was -> retraction(part, was)).orElseGet(() -> nothing(part, status));
    }
    return nothing(part, status);
  }

  private static Found nothing(FhirFile.Part part, Status status) {
    String words =
        switch (status) {
          case ENTERED_IN_ERROR -> "It was entered in error, and the season does not have it.";
          case CANCELLED -> "It was cancelled, and has no result.";
          default -> "It is " + status.word() + "; take it in when it is final.";
        };
    return Found.of(part, Found.Outcome.LEFT_OUT, null, words);
  }

  private Found retraction(FhirFile.Part part, Progesterone was) {
    known.remove(was.id());
    return Found.of(
        part, Found.Outcome.RETRACTION, was.id(), "The laboratory says it was entered in error.");
  }

  private Found result(
      FhirFile.Part part,
      ObservationResource read,
      Status status,
      List<String> ids,
      @Nullable Progesterone before) {
    String id = before == null ? freshId(read, ids) : before.id();
    boolean wasTakenBack = before == null && ids.contains(id) && known.hasId(id);
    if (wasTakenBack && !status.changesResult()) {
      return Found.of(part, Found.Outcome.LEFT_OUT, id, "It was taken back before.");
    }
    Node.Members observation = read.observation(id);
    Reading reading = known.reading(observation);
    if (reading instanceof Reading.Refused refused) {
      return Found.refused(part, refused.problems().stream().map(p -> moved(p, read)).toList());
    }
    Progesterone value = KnownResults.only((Reading.Read) reading);
    if (before != null) {
      return again(part, read, status, before, value, observation);
    }
    Optional<Progesterone> same = known.same(value);
    if (same.isPresent()) {
      return duplicate(part, same.get(), value);
    }
    Optional<Progesterone> other = known.drawnTogether(value);
    if (other.isPresent()) {
      String there = other.get().id();
      return differs(
          part,
          "it differs from " + there + ", drawn at the same time",
          "If " + there + " is wrong, correct it or take it back.");
    }
    known.put(value);
    String notes = String.join(" ", read.notes());
    return wasTakenBack
        ? Found.of(
            part,
            Found.Outcome.CORRECTION,
            id,
            ("It was taken back, and is issued again. " + notes).strip(),
            observation)
        : Found.of(part, Found.Outcome.NEW, id, notes, observation);
  }

  private String freshId(ObservationResource read, List<String> ids) {
    if (!ids.isEmpty()) {
      return ids.get(0);
    }
    // without an identifier, the moment it was drawn has to name it
    Node at = read.observation("").byKey().get("at");
    return known.freshId(
        OffsetDateTime.parse(((Node.Text) Objects.requireNonNull(at)).value()).toInstant());
  }

  /** A result whose identifier the season knows. */
  private Found again(
      FhirFile.Part part,
      ObservationResource read,
      Status status,
      Progesterone before,
      Progesterone value,
      Node.Members observation) {
    boolean tellsMore = status.changesResult() && tellsUnit(value, before);
    if (KnownResults.isSame(value, before) && !tellsMore) {
      return duplicate(part, before, value);
    }
    if (!status.changesResult()) {
      return differs(
          part,
          "it differs from "
              + before.id()
              + ", which has its identifier, and is not called corrected",
          "Ask the laboratory which of the two holds.");
    }
    known.put(value);
    String was =
        (before.comparator() == null ? "" : before.comparator().word())
            + before.value()
            + (before.statedUnit() == null ? "" : " " + before.statedUnit().word());
    return Found.of(
        part,
        Found.Outcome.CORRECTION,
        before.id(),
        ("It was " + was + ". " + String.join(" ", read.notes())).strip(),
        observation);
  }

  private static boolean tellsUnit(Progesterone value, Progesterone before) {
    return before.statedUnit() == null && value.statedUnit() != null;
  }

  private static Found duplicate(FhirFile.Part part, Progesterone there, Progesterone value) {
    return Found.of(
        part,
        Found.Outcome.DUPLICATE,
        there.id(),
        tellsUnit(value, there)
            ? "It says its unit, which " + there.id() + " lacks: correct " + there.id() + "."
            : "");
  }

  private static Found differs(FhirFile.Part part, String message, String hint) {
    return Found.refused(
        part, List.of(new Problem(part.at().text(), ProblemCode.DUPLICATE_ID, message, hint)));
  }

  private static Problem moved(Problem problem, ObservationResource read) {
    String path = problem.path();
    String field = path.startsWith(ALONE) ? path.substring(ALONE.length()) : "";
    return new Problem(read.place(field).text(), problem.code(), problem.message(), problem.hint());
  }
}
