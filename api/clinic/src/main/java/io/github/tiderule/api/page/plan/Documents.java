package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problems;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Reads single fields of the texts the record keeps. */
public final class Documents {

  private Documents() {}

  /** The object a text is, which was checked when it was kept. */
  public static Node.Members of(String text) {
    Node node = NodeReader.read(text, new Problems()).orElse(null);
    if (node instanceof Node.Members members) {
      return members;
    }
    throw new IllegalStateException("the record holds no object: " + text);
  }

  /** A text or a number of an object, as it was written; absent where there is none. */
  public static @Nullable String text(Node.Members members, String... path) {
    Node at = members;
    for (String step : path) {
      at = at instanceof Node.Members inside ? inside.byKey().get(step) : null;
    }
    if (at instanceof Node.Text text) {
      return text.value();
    }
    return at instanceof Node.Digits digits ? digits.written() : null;
  }

  /** What people call her. */
  public static String name(Female female, Texts texts) {
    String name = text(of(female.document()), "name");
    return name == null ? texts.say("female.unnamed", female.handle()) : name;
  }

  /** The day of first blood in words. */
  public static String firstBlood(Cycle cycle, Texts texts, Words words) {
    String on = text(of(cycle.document()), "firstBlood", "on");
    return on == null ? texts.say("season.blood-unknown") : words.day(LocalDate.parse(on));
  }

  /** The zone of a season. */
  public static ZoneId zone(Cycle cycle) {
    String zone = text(of(cycle.document()), "zone");
    if (zone == null) {
      throw new IllegalStateException("season " + cycle.key() + " has no zone");
    }
    return ZoneId.of(zone);
  }
}
