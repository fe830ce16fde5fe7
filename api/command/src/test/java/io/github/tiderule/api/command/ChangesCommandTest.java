package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.json.Schemas;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code changes} with the real engine, on an invented season. */
class ChangesCommandTest {

  private static final Tiderule ENGINE = Tiderule.create();

  @TempDir private Path directory = Path.of("");

  private static String value(String id, int day, double ngPerMl) {
    return String.format(
        java.util.Locale.ROOT,
        "{\"id\":\"%s\",\"kind\":\"progesterone\",\"at\":\"2027-03-%02dT08:00:00+01:00\","
            + "\"value\":%.1f,\"unit\":\"ng/mL\",\"method\":\"eclia\",\"laboratory\":\"north\"}",
        id,
        day,
        ngPerMl);
  }

  private String file(String name, String id, int asOf, String... observations) throws IOException {
    String text =
        "{\"schema\":\"tiderule/cycle/1\",\"asOf\":\"2027-03-"
            + (asOf < 10 ? "0" : "")
            + asOf
            + "T18:00:00+01:00\",\"zone\":\"Europe/Vienna\",\"female\":{\"id\":\""
            + id
            + "\"},\"firstBlood\":{\"on\":\"2027-02-24\",\"certainty\":\"seen\"},"
            + "\"observations\":["
            + String.join(",", observations)
            + "],\"breeding\":{\"semen\":\"frozen\",\"route\":\"transcervical\",\"doses\":1}}";
    return Files.writeString(directory.resolve(name), text).toString();
  }

  private static Ran changes(String... arguments) {
    String[] all = new String[arguments.length + 1];
    all[0] = "changes";
    System.arraycopy(arguments, 0, all, 1, arguments.length);
    return Ran.withEngine(ENGINE::advise, "", all);
  }

  @Test
  void anEarlierPlanThatMovedIsSaidToBeWithdrawn() throws IOException {
    String before = file("b.json", "fern", 6, value("p1", 3, 0.6), value("p2", 6, 2.4));
    String after =
        file("a.json", "fern", 8, value("p1", 3, 0.6), value("p2", 6, 2.4), value("p3", 8, 2.3));
    Ran ran = changes(before, after);
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.err(), is(emptyString()));
    assertThat(
        ran.out(),
        allOf(
            containsString("The earlier plan is withdrawn; another takes its place."),
            containsString(": withdrawn; tell whoever was told of it."),
            containsString(": new."),
            containsString("Its middle moved"),
            containsString("progesterone 2.3 ng/mL"),
            containsString("(p3), new: it moved the")));
  }

  @Test
  void theDocumentFollowsItsSchema() throws IOException {
    String before = file("b.json", "fern", 6, value("p1", 3, 0.6), value("p2", 6, 2.4));
    String after =
        file("a.json", "fern", 8, value("p1", 3, 0.6), value("p2", 6, 2.2), value("p3", 8, 6.1));
    Ran ran = changes("--json", before, after);
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(Schemas.againstChanges(ran.out()), is(empty()));
    assertThat(ran.out(), containsString("\"kind\": \"corrected\""));
    assertThat(ran.out(), containsString("\"kind\": \"added\""));
    assertThat(changes("--json", before, after).out(), is(ran.out()));
  }

  /** A file with its later value, and the file as it was, say the same. */
  @Test
  void sinceIsTheFileAsItWasKnown() throws IOException {
    String then = file("b.json", "fern", 6, value("p1", 3, 0.6), value("p2", 6, 2.4));
    String now =
        file("a.json", "fern", 8, value("p1", 3, 0.6), value("p2", 6, 2.4), value("p3", 8, 6.1));
    Ran since = changes(now, "--since", "2027-03-06T18:00:00+01:00");
    assertThat(since.status(), is(ExitStatus.DONE));
    assertThat(since.out(), is(changes(then, now).out()));
  }

  @Test
  void theSameFileTwiceHasNothingToSay() throws IOException {
    String file = file("b.json", "fern", 6, value("p1", 3, 0.6), value("p2", 6, 2.4));
    Ran ran = changes(file, file);
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), containsString("Nothing: what to do, the plan and the estimate are"));
    assertThat(ran.out(), not(containsString("withdrawn")));
  }

  @Test
  void aPlanThatWasCarriedOutIsNotWithdrawn() throws IOException {
    String[] values = {
      value("p1", 3, 0.6), value("p2", 5, 2.6), value("p3", 7, 6.4), value("p4", 8, 10.5)
    };
    String before = file("b.json", "fern", 8, values);
    Ran planned = Ran.withEngine(ENGINE::advise, "", "advise", "--json", before);
    String at =
        planned.out().replaceAll("(?s).*\"plan\": \\{\\s*\"at\": \\[\\s*\"([^\"]+)\".*", "$1");
    String done =
        "{\"id\":\"m1\",\"kind\":\"breeding\",\"at\":\""
            + at
            + "\",\"semen\":\"frozen\",\"route\":\"transcervical\"}";
    String after = file("a.json", "fern", 14, values[0], values[1], values[2], values[3], done);
    Ran ran = changes(before, after);
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), containsString(": done."));
    assertThat(ran.out(), not(containsString("tell whoever was told of it")));
  }

  @Test
  void refusesFilesItCannotCompare() throws IOException {
    String fern = file("b.json", "fern", 6, value("p1", 3, 0.6));
    String hazel = file("h.json", "hazel", 8, value("p1", 3, 0.6));
    String later = file("l.json", "fern", 9, value("p1", 3, 0.6));
    assertRefused(changes(fern, hazel), "two females, fern and hazel");
    assertRefused(changes(later, fern), "is for a later moment than");
    assertRefused(changes(fern), "Give two files");
    assertRefused(changes(fern, later, "--since", "2027-03-05T18:00:00+01:00"), "Give two files");
    assertRefused(changes(fern, "--since", "2027-03-07T18:00:00+01:00"), "must lie before");
    assertRefused(changes(fern, "--since", "yesterday"), "--since is \"yesterday\"");
    assertRefused(changes("-", "-"), "Only one of the two files can be the standard input");
    assertRefused(changes(fern, directory.resolve("none.json").toString()), "There is no file");
  }

  @Test
  void refusesAnEmptyFileAndABrokenOne() throws IOException {
    String fern = file("b.json", "fern", 6, value("p1", 3, 0.6));
    String nothing = Files.writeString(directory.resolve("empty.json"), "").toString();
    String broken = Files.writeString(directory.resolve("broken.json"), "{\"schema\":").toString();
    assertRefused(changes(nothing, fern), "(empty-file)");
    assertRefused(changes(fern, broken), "(not-json)");
    Ran both = changes(nothing, broken);
    assertRefused(both, "(empty-file)");
    assertThat(both.err(), containsString("(not-json)"));
    Ran json = changes("--json", nothing, broken);
    assertThat(json.status(), is(ExitStatus.REFUSED));
    assertThat(Schemas.againstProblems(json.out()), is(List.of()));
  }

  private static void assertRefused(Ran ran, String words) {
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.out(), is(emptyString()));
    assertThat(ran.err().replaceAll("\\s+", " "), containsString(words));
  }
}
