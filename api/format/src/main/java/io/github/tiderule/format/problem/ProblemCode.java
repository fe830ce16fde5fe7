package io.github.tiderule.format.problem;

import io.github.tiderule.rules.fact.Worded;

/** The kinds of problems. Words are stable: programs may rely on them. */
public enum ProblemCode implements Worded {
  /** Nothing but white space. */
  EMPTY_FILE("empty-file", "Maybe the file was not saved, or another one was meant?"),
  /** The bytes are not UTF-8. */
  NOT_UTF8("not-utf8", "Maybe save the file as UTF-8?"),
  /** Not a JSON document. */
  NOT_JSON("not-json", "Maybe a comma, a quote or a bracket is missing just before this place?"),
  /** Not a table of comma-separated values, or a row of another length. */
  NOT_A_TABLE("not-a-table", "Maybe a comma or a quote is missing or too many?"),
  /** A table with another heading. */
  WRONG_HEADING("wrong-heading", "Maybe another table was meant?"),
  /** A parameter that the rules do not have. */
  UNKNOWN_PARAMETER("unknown-parameter", "Maybe a typing slip?"),
  /** More text after the end of the document. */
  TRAILING_CONTENT(
      "trailing-content", "Maybe two files ran together? For many cycles, use the batch command."),
  /** Longer than the reader takes. */
  TOO_LARGE("too-large", "Maybe this is not a cycle file?"),
  /** Nested deeper than the reader takes. */
  TOO_DEEP("too-deep", "Maybe this is not a cycle file?"),
  /** A list with more entries than the reader takes. */
  TOO_MANY("too-many", "Maybe several seasons stand in one file?"),
  /** The same key twice in one object. */
  DUPLICATE_KEY("duplicate-key", "Maybe remove one of the two?"),
  /** A field no document of this kind has. */
  UNKNOWN_FIELD("unknown-field", "Maybe a typing slip?"),
  /** A field that must be there is not. */
  MISSING_FIELD("missing-field", "Maybe it was left out?"),
  /** A value of the wrong JSON type. */
  WRONG_TYPE("wrong-type", "Maybe quotes or brackets are too many or too few?"),
  /** A word outside its list. */
  UNKNOWN_WORD("unknown-word", "Maybe a typing slip?"),
  /** Neither schema nor version is one the reader knows. */
  UNKNOWN_SCHEMA("unknown-schema", "Maybe \"tiderule/cycle/1\"?"),
  /** Not a finite number. */
  NOT_A_NUMBER("not-a-number", "Maybe leave the observation out until the number is known?"),
  /** A number with a fraction where whole ones count. */
  NOT_A_WHOLE_NUMBER("not-a-whole-number", "Maybe round it?"),
  /** A number below zero. */
  NEGATIVE_VALUE("negative-value", "Maybe the minus sign is a slip?"),
  /** A number no female or sample can have. */
  OUT_OF_RANGE("out-of-range", "Maybe another unit was meant?"),
  /** A date and time without its offset from UTC. */
  MISSING_OFFSET("missing-offset", "Maybe add the offset, as in 2027-01-08T08:00:00+01:00?"),
  /** Not a date and time. */
  NOT_AN_INSTANT("not-an-instant", "Write it like 2027-01-08T08:00:00+01:00."),
  /** Not a date. */
  NOT_A_DATE("not-a-date", "Write it like 2027-01-08."),
  /** Not a time of day. */
  NOT_A_TIME("not-a-time", "Write it like 14:00."),
  /** A date far from the season. */
  IMPLAUSIBLE_DATE("implausible-date", "Maybe the year is a slip?"),
  /** Two values that must follow each other do not. */
  WRONG_ORDER("wrong-order", "Maybe the two are swapped?"),
  /** Two statements that cannot both be true. */
  CONTRADICTION("contradiction", "Maybe one of the two is a slip?"),
  /** Not a zone of the tz database. */
  UNKNOWN_ZONE("unknown-zone", "Write it like Europe/Vienna."),
  /** Two observations with one id. */
  DUPLICATE_ID("duplicate-id", "Maybe one was pasted twice? Give every observation its own id."),
  /** A text without a visible character. */
  EMPTY_TEXT("empty-text", "Maybe leave the field out?"),
  /** A text longer than the reader takes. */
  TOO_LONG("too-long", "Maybe shorten it?"),
  /** A control or direction character in a text. */
  ILLEGAL_CHARACTER("illegal-character", "Maybe it came along when the text was pasted?"),
  /** More problems than are listed. */
  TOO_MANY_PROBLEMS("too-many-problems", "Put right the ones above and try again."),
  /** The program failed; the document may be fine. */
  INTERNAL_FAULT("internal-fault", "Please report it together with this document.");

  private final String word;
  private final String usualHint;

  ProblemCode(String word, String usualHint) {
    this.word = word;
    this.usualHint = usualHint;
  }

  @Override
  public String word() {
    return word;
  }

  /** What to say when nothing better is known. */
  String usualHint() {
    return usualHint;
  }
}
