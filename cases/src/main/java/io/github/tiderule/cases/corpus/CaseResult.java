package io.github.tiderule.cases.corpus;

import java.util.List;
import java.util.stream.Collectors;

/**
 * How one case went.
 *
 * @param provenance where the case comes from
 * @param checks how many things were held against the answer
 * @param differences empty when the case holds
 */
public record CaseResult(
    CaseFolder folder,
    String title,
    String why,
    String provenance,
    int checks,
    List<Difference> differences) {

  public CaseResult {
    differences = List.copyOf(differences);
  }

  /** Whether everything is as expected. */
  public boolean holds() {
    return differences.isEmpty();
  }

  /** The differences, with what the case is about, for a person. */
  public String words() {
    return folder.name()
        + ": "
        + title
        + "\n  why: "
        + why.strip()
        + "\n"
        + differences.stream().map(Difference::toString).collect(Collectors.joining("\n"));
  }
}
