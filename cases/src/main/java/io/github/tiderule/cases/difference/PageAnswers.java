package io.github.tiderule.cases.difference;

import io.github.tiderule.cases.difference.program.Served;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

/**
 * What the pages of the service say. All cases are taken into a fresh record, each as a season of a
 * female of her own, and are looked at from the moment of their files.
 */
final class PageAnswers {

  private static final List<String> OF_SEASON =
      List.of("", "/edit", "/breeding", "/semen", "/outcome", "/what-if");
  private static final List<String> KINDS =
      List.of(
          "progesterone",
          "progesterone-band",
          "lh",
          "cytology",
          "sign",
          "breeding",
          "vaginoscopy",
          "ultrasound",
          "temperature",
          "scan",
          "radiograph");
  private static final List<String> FREE_OF_SEASONS =
      List.of("/", "/timing", "/help", "/rules", "/females/new", "/no-such-page");

  private final Asked asked;
  private final Masked masked = Masked.today();
  private final Path data;

  /** Whether the forms are written that are much the same for every season. */
  private boolean hasForms;

  PageAnswers(Asked asked) {
    this.asked = asked;
    this.data = asked.scratch().resolve("record");
  }

  /**
   * Writes them.
   *
   * @param wanted those of them of which each page is wanted
   * @throws IOException if one cannot be had or written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write(SortedMap<String, String> cases, SortedMap<String, String> wanted)
      throws IOException, ReflectiveOperationException {
    StringBuilder lines = new StringBuilder();
    for (Map.Entry<String, String> one : cases.entrySet()) {
      lines.append(Told.of(one.getKey(), one.getValue())).append('\n');
    }
    asked.run("record/import.txt", lines.toString(), "import", "--data", data.toString());
    asked.run("record/export.jsonl", "", "export", "--data", data.toString());
    Served served = Served.of(asked.program(), data);
    Map<String, String> females = females(served);
    for (Map.Entry<String, String> one : cases.entrySet()) {
      String female = females.get(Told.id(one.getKey()));
      if (female != null) {
        female(served, one.getKey(), female, one.getValue(), wanted.containsKey(one.getKey()));
      }
    }
    write(served);
  }

  private void write(Served served) throws IOException {
    for (String path : FREE_OF_SEASONS) {
      page(served, "site" + (path.equals("/") ? "/home" : path), path);
    }
    asked.folder().write("pages/site/openapi.yaml", served.get("/v1/openapi.yaml").body());
    for (Tree rule : Tree.of(served.get("/v1/rulebook").body()).at("cards").entries()) {
      page(served, "rule/" + rule.at("id").text(), "/rules/" + rule.at("id").text());
    }
  }

  /** Keys of all females by id. */
  private static Map<String, String> females(Served served) throws IOException {
    Map<String, String> keys = new LinkedHashMap<>();
    String after = "";
    do {
      Tree page = Tree.of(served.get("/v1/females?limit=200" + after).body());
      for (Tree one : page.at("items").entries()) {
        keys.put(one.at("female").at("id").text(), one.at("key").text());
      }
      after = page.at("next").text().isEmpty() ? "" : "&after=" + page.at("next").text();
    } while (!after.isEmpty());
    return keys;
  }

  private void female(Served served, String name, String female, String cycle, boolean wanted)
      throws IOException {
    Tree seasons = Tree.of(served.get("/v1/females/" + female + "/cycles").body()).at("items");
    for (Tree one : seasons.entries()) {
      String season = one.at("key").text();
      if (one.at("asOf").text().isEmpty()) {
        lookFrom(served, season, Tree.of(cycle).at("asOf").text());
      }
      if (wanted) {
        season(served, "season/" + name, season, cycle);
      }
    }
    if (wanted) {
      page(served, "female/" + name, "/females/" + female);
      page(served, "female/" + name + "-edit", "/females/" + female + "/edit");
    }
  }

  /** A season that could be going on is looked at from now, which is another moment every run. */
  private static void lookFrom(Served served, String season, String asOf) throws IOException {
    String path = "/v1/cycles/" + season;
    Served.Answer there = served.get(path);
    Map<String, Node> fields = Told.fields(Tree.of(there.body()).at("season"));
    fields.put("asOf", new Node.Text(asOf));
    Served.Answer put = served.put(path, there.tag(), NodeText.of(new Node.Members(fields)));
    if (put.status() != 200) {
      throw new IOException(path + " cannot be changed: " + put.body());
    }
  }

  private void season(Served served, String name, String season, String cycle) throws IOException {
    String path = "/seasons/" + season;
    page(served, name + "/reasoning-none", path + "/reasoning");
    for (String part : OF_SEASON) {
      page(served, name + (part.isEmpty() ? "/season" : part), path + part);
    }
    Served.Answer advice = served.get(path + "/reasoning");
    write(name + "/reasoning", advice);
    page(served, name + "/season-kept", path);
    List<Tree> observations = Tree.of(cycle).at("observations").entries();
    if (!observations.isEmpty()) {
      Tree last = observations.get(observations.size() - 1);
      String id = last.at("id").text();
      page(served, name + "/entry", path + "/entries/" + id);
      page(served, name + "/reasoning-of-it", advice.path() + "?observation=" + id);
      page(
          served,
          name + "/reasoning-of-day",
          advice.path() + "?day=" + last.at("at").text().replaceFirst("T.*", ""));
    }
    page(served, name + "/what-if-8", path + "/what-if?value=8&unit=ng/mL&at=" + local(cycle));
    write(name + "/calendar", served.get("/v1/cycles/" + season + "/calendar.ics"));
    if (!hasForms) {
      hasForms = true;
      for (String kind : KINDS) {
        page(served, name + "/enter-" + kind, path + "/enter/" + kind);
      }
    }
  }

  private static String local(String cycle) throws IOException {
    return Tree.of(cycle).at("asOf").text().substring(0, "2027-01-01T00:00".length());
  }

  private void page(Served served, String name, String path) throws IOException {
    write(name, served.get(path));
  }

  private void write(String name, Served.Answer answer) throws IOException {
    String status = answer.status() == 200 ? "" : "-- status " + answer.status() + "\n";
    asked
        .folder()
        .write("pages/" + name + ".txt", masked.page(status + PageText.of(answer.body())));
  }
}
