package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.SortedMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the commands say that compare seasons, share a stud among them, or take something in. */
record SeasonsAnswers(Asked asked) {

  private static final int FEMALES_FOR_A_STUD = 3;
  private static final int CASES_FOR_A_BATCH = 10;

  private static final String TABLE =
      """
      Drawn;Result;Unit
      27.02.2027 08:00;0,9;ng/mL
      2027-02-28 08:30;<0,2;ug/L
      01.03.2027 08:00;4,1;nmol/L
      02.03.2027;2,0;ng/mL
      2.3.2027 9:00;much;ng/mL
      03.03.2027 08:00;3,2;mg
      """;

  /**
   * Writes what changed in a case within two days, and what is taken into it.
   *
   * @throws IOException if an answer cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write(String name, String cycle) throws IOException, ReflectiveOperationException {
    String since = asOf(cycle).minusDays(2).toString();
    asked.run("changes/" + name + ".txt", cycle, "changes", "--since", since, Asked.INPUT);
    asked.run(
        "changes/" + name + ".json", cycle, "changes", "--json", "--since", since, Asked.INPUT);
    Path file = Files.writeString(asked.scratch().resolve("cycle.json"), cycle);
    asked.run(
        "taken/" + name + "-table.txt",
        TABLE,
        "laboratory",
        "--columns",
        "at=Drawn,value=Result,unit=Unit",
        "--into",
        file.toString(),
        Asked.INPUT);
    String bundle = asked.program().run(cycle, "fhir", "export", Asked.INPUT).out();
    asked.run(
        "taken/" + name + "-fhir.txt",
        bundle.replace("\"final\"", "\"amended\""),
        "fhir",
        "import",
        "--into",
        file.toString(),
        Asked.INPUT);
    Files.delete(file);
  }

  private static OffsetDateTime asOf(String cycle) throws IOException {
    return OffsetDateTime.parse(Tree.of(cycle).at("asOf").text());
  }

  /** Writes how a stud is shared among each three cases in a row that are bred by a service. */
  void stud(SortedMap<String, String> cases) throws IOException, ReflectiveOperationException {
    List<String> names =
        cases.keySet().stream()
            .filter(name -> cases.getOrDefault(name, "").contains("\"natural\""))
            .toList();
    for (int i = 0; i + FEMALES_FOR_A_STUD <= names.size(); i += FEMALES_FOR_A_STUD) {
      StringBuilder females = new StringBuilder();
      for (String one : names.subList(i, i + FEMALES_FOR_A_STUD)) {
        females.append(Told.of(one, cases.getOrDefault(one, ""))).append('\n');
      }
      String lines = females.toString();
      OffsetDateTime from = asOf(cases.getOrDefault(names.get(i), ""));
      String services =
          Stream.of(1, 3, 4)
              .map(days -> from.plusDays(days).toString())
              .collect(Collectors.joining(","));
      String name = "stud/from-" + names.get(i);
      asked.run(name + ".txt", lines, "stud", "--lines", "--services", services, Asked.INPUT);
      asked.run(
          name + ".json", lines, "stud", "--json", "--lines", "--services", services, Asked.INPUT);
    }
  }

  /** Writes what is said of several cases one after the other. */
  void together(SortedMap<String, String> cases) throws IOException, ReflectiveOperationException {
    String past = lines(cases, cycle -> cycle.contains("\"whelpedOn\""));
    asked.run("accuracy/past.txt", past, "accuracy", Asked.INPUT);
    asked.run("accuracy/past.json", past, "accuracy", "--json", Asked.INPUT);
    String some = lines(cases, cycle -> cycle.hashCode() % CASES_FOR_A_BATCH == 0);
    asked.runWithProtocol("batch/some.jsonl", some, "batch", Asked.INPUT);
  }

  private static String lines(SortedMap<String, String> cases, Predicate<String> wanted) {
    return cases.values().stream().filter(wanted).collect(Collectors.joining("\n", "", "\n"));
  }
}
