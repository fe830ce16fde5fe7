package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.KeyNames;
import io.github.tiderule.api.report.text.ObservationWords;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sentences of a trace in the order and with the marks of somebody's country. */
final class Sentences {

  private static final Pattern WIRE_DAY = Pattern.compile("\\b\\d{4}-\\d{2}-\\d{2}\\b");

  private final Words words;
  private final ObservationWords names;
  private final KeyNames keys;

  Sentences(Words words, CycleRecord cycle) {
    this.words = words;
    this.names = new ObservationWords(cycle);
    this.keys = new KeyNames(cycle);
  }

  /**
   * A sentence; days written as on the wire are written as people say them, and so are keys of
   * observations.
   */
  String of(String trace) {
    String sentence = keys.in(trace);
    String said = words.localised(WIRE_DAY.matcher(sentence).replaceAll("\0"));
    Matcher days = WIRE_DAY.matcher(sentence);
    while (days.find()) {
      String day = words.shortDay(LocalDate.parse(days.group()));
      said = said.replaceFirst("\0", Matcher.quoteReplacement(day));
    }
    return said;
  }

  /** Sentences one for one. */
  List<String> all(List<Sentence> sentences) {
    return sentences.stream().map(sentence -> of(sentence.toString())).toList();
  }

  /** An observation by name. */
  Named named(String observation) {
    return new Named(observation, words.localised(names.of(observation)));
  }

  List<Named> named(List<String> observations) {
    return observations.stream().map(this::named).toList();
  }
}
