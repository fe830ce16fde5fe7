package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.format.node.Node;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What is remembered of her last progesterone value, so that it need not be typed again.
 *
 * @param unit only to be shown: a unit is said anew each time
 */
public record Remembered(
    @Nullable String method,
    @Nullable String laboratory,
    @Nullable String specimen,
    @Nullable String tube,
    @Nullable String unit) {

  /** From the entries that stand in a season; nothing is remembered where none is a value. */
  public static Remembered of(List<Entry> current) {
    Node.Members last = null;
    OffsetDateTime lastAt = null;
    for (Entry entry : current) {
      Node.Members one = Documents.of(Objects.requireNonNull(entry.document()));
      OffsetDateTime at = OffsetDateTime.parse(Objects.requireNonNull(Documents.text(one, "at")));
      boolean value = "progesterone".equals(Documents.text(one, "kind"));
      if (value && (lastAt == null || at.isAfter(lastAt))) {
        last = one;
        lastAt = at;
      }
    }
    return last == null
        ? new Remembered(null, null, null, null, null)
        : new Remembered(
            Documents.text(last, "method"),
            Documents.text(last, "laboratory"),
            Documents.text(last, "specimen"),
            Documents.text(last, "tube"),
            Documents.text(last, "unit"));
  }

  /** A form with what is remembered, and without a unit. */
  public Typed form() {
    return Typed.nothing()
        .fill("limit", "equal")
        .fill("method", method)
        .fill("laboratory", laboratory)
        .fill("specimen", specimen)
        .fill("tube", tube);
  }
}
