package io.github.tiderule.api.command;

import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.SeasonFile;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.service.SeasonChanges;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.node.Node;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A season that results are taken into: a cycle file, or one of the record. */
interface Into {

  /** The season as it is. */
  CycleRecord cycle();

  /** Names the season among all seasons. */
  String season();

  /** Ids that no new observation may have. */
  Set<String> taken();

  /** What it is called in messages. */
  String words();

  /**
   * Takes them in, all or none.
   *
   * @throws SeasonFile.Refused if the season with them is no good one
   * @throws Given.Unreadable if it is no file that can be changed
   */
  void save(List<SeasonChanges.Change> changes)
      throws IOException, SeasonFile.Refused, Given.Unreadable;

  /**
   * A cycle file.
   *
   * @throws SeasonFile.Refused if it is no good one
   * @throws Given.Unreadable if it cannot be read
   */
  static Into file(Given file, Streams streams) throws SeasonFile.Refused, Given.Unreadable {
    return new OfFile(SeasonFile.read(file, streams));
  }

  /** A cycle file says what is known now; so a correction stands in the place of the old. */
  record OfFile(SeasonFile file) implements Into {

    @Override
    public CycleRecord cycle() {
      return file.cycle();
    }

    @Override
    public String season() {
      return CalendarFeed.seasonOf(file.cycle());
    }

    @Override
    public Set<String> taken() {
      return Set.of();
    }

    @Override
    public String words() {
      return file.words();
    }

    @Override
    public void save(List<SeasonChanges.Change> changes)
        throws IOException, SeasonFile.Refused, Given.Unreadable {
      file.save(before -> changed(before, changes));
    }

    private static List<Node> changed(List<Node> before, List<SeasonChanges.Change> changes) {
      List<Node> observations = new ArrayList<>(before);
      for (SeasonChanges.Change change : changes) {
        Node.Members now = change.observation();
        if (now == null) {
          observations.removeIf(one -> hasId(one, change.id()));
        } else if (observations.stream().anyMatch(one -> hasId(one, change.id()))) {
          observations.replaceAll(one -> hasId(one, change.id()) ? now : one);
        } else {
          observations.add(now);
        }
      }
      return observations;
    }

    private static boolean hasId(Node observation, String id) {
      return observation instanceof Node.Members members && id.equals(members.text("id"));
    }
  }
}
