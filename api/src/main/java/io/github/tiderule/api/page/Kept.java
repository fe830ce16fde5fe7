package io.github.tiderule.api.page;

import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.record.GivenAdvice;
import java.time.OffsetDateTime;
import java.util.Objects;

/** What is to be read from kept advice without asking the engine again. */
record Kept(String now, String headline, OffsetDateTime asOf, OffsetDateTime validUntil) {

  static Kept of(GivenAdvice given) {
    Node.Members answer = Documents.of(given.answer());
    return new Kept(
        text(answer, "action", "now"),
        text(answer, "action", "headline"),
        OffsetDateTime.parse(text(answer, "asOf")),
        OffsetDateTime.parse(text(answer, "validUntil")));
  }

  private static String text(Node.Members answer, String... path) {
    return Objects.requireNonNull(Documents.text(answer, path), "advice without " + path[0]);
  }
}
