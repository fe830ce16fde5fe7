package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Tokens;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Review;
import io.github.tiderule.api.record.Revision;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/** What the record holds, as documents for one person. */
final class Shown {

  private final Person reader;
  private final People people;
  private final Map<String, String> names = new HashMap<>();

  Shown(Person reader, Ledger ledger) {
    this.reader = reader;
    this.people = People.of(ledger);
  }

  private String name(String key) {
    return names.computeIfAbsent(key, one -> people.find(one).map(Person::name).orElse(one));
  }

  private static @Nullable OffsetDateTime utc(@Nullable Instant at) {
    return at == null ? null : at.atOffset(ZoneOffset.UTC);
  }

  String female(Female female) {
    return Document.text(Layout.ONE_LINE, json -> female(json, female));
  }

  void female(Document json, Female female) {
    json.text("key", female.key())
        .flag("own", female.owner().equals(reader.key()))
        .flag("shared", female.shared())
        .whole("version", female.version())
        .instant("createdAt", utc(female.createdAt()))
        .instant("changedAt", utc(female.changedAt()))
        .raw("female", female.document());
  }

  String cycle(Cycle cycle) {
    return Document.text(Layout.ONE_LINE, json -> cycle(json, cycle));
  }

  void cycle(Document json, Cycle cycle) {
    json.text("key", cycle.key())
        .text("female", cycle.female())
        .whole("version", cycle.version())
        .whole("entries", cycle.entries())
        .instant("asOf", utc(cycle.asOf()))
        .instant("createdAt", utc(cycle.createdAt()))
        .instant("changedAt", utc(cycle.changedAt()))
        .raw("season", cycle.document());
  }

  String entry(Entry entry) {
    return Document.text(Layout.ONE_LINE, json -> entry(json, entry));
  }

  void entry(Document json, Entry entry) {
    json.whole("number", entry.number())
        .text("id", entry.observation())
        .word("change", entry.change());
    if (entry.replaces() == null) {
      json.text("replaces", null);
    } else {
      json.whole("replaces", entry.replaces());
    }
    json.text("reason", entry.reason())
        .text("by", name(entry.person()))
        .instant("at", utc(entry.at()))
        .raw("observation", entry.document());
  }

  /**
   * @param name what the document is: {@code female} or {@code season}
   */
  void revision(Document json, Revision revision, String name) {
    json.whole("version", revision.version())
        .text("by", name(revision.person()))
        .instant("at", utc(revision.at()))
        .raw(name, revision.document());
  }

  void advice(Document json, GivenAdvice advice) {
    json.text("key", advice.key())
        .text("cycle", advice.cycle())
        .instant("givenAt", utc(advice.givenAt()))
        .instant("asOf", utc(advice.asOf()))
        .text("by", name(advice.person()));
    stamp(json, "stamp", advice.engine(), advice.rules());
  }

  static void stamp(Document json, String name, String engine, String rules) {
    json.object(name, engine, said -> json.text("engine", said).text("rules", rules));
  }

  String review(Review review) {
    return Document.text(Layout.ONE_LINE, json -> review(json, review));
  }

  void review(Document json, Review review) {
    json.text("key", review.key())
        .text("advice", review.advice())
        .word("verdict", review.verdict())
        .text("note", review.note())
        .text("by", review.typedName() == null ? name(review.person()) : review.typedName())
        .instant("at", utc(review.at()));
  }

  void token(Document json, Tokens.Token token) {
    json.text("key", token.key())
        .text("label", token.label())
        .instant("createdAt", utc(token.createdAt()))
        .instant("revokedAt", utc(token.revokedAt()));
  }

  void line(Document json, Audit.Line line) {
    json.text("key", line.key())
        .instant("at", utc(line.at()))
        .text("by", line.person() == null ? null : name(line.person()))
        .text("deed", line.deed())
        .text("about", line.about())
        .text("female", line.female())
        .text("address", line.address());
  }

  static void person(Document json, Person person) {
    json.text("name", person.name()).word("role", person.role());
  }

  static <T> Answer page(Page<T> page, BiConsumer<Document, T> item) {
    return Answer.json(
        Document.text(
            Layout.ONE_LINE,
            json ->
                json.objects("items", page.items(), one -> item.accept(json, one))
                    .text("next", page.next())));
  }
}
