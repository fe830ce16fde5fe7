package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.record.table.Rows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The advice given, and what vets signed about it. Both are only added. */
public final class Advices {

  private final Handle handle;
  private final KeyedRows<GivenAdvice> advice;
  private final KeyedRows<Review> reviews;

  Advices(Handle handle) {
    this.handle = handle;
    this.advice = KeyedRows.of(handle, "advice", Advices::advice, GivenAdvice::key);
    this.reviews = KeyedRows.of(handle, "review", Advices::review, Review::key);
  }

  private static GivenAdvice advice(ResultSet row) throws SQLException {
    return new GivenAdvice(
        row.getString("id"),
        row.getString("cycle"),
        Rows.instant(row, "given_at"),
        Rows.instant(row, "as_of"),
        row.getString("person"),
        row.getString("engine"),
        row.getString("rules"),
        row.getString("cycle_file"),
        row.getString("answer"));
  }

  private static Review review(ResultSet row) throws SQLException {
    return new Review(
        row.getString("id"),
        row.getString("advice"),
        row.getString("person"),
        Rows.instant(row, "at"),
        Review.Verdict.valueOf(row.getString("verdict")),
        row.getString("note"),
        row.getString("typed_name"));
  }

  /** One advice. */
  public Optional<GivenAdvice> find(String key) {
    return advice.find(key);
  }

  /** The advice given on a season, in the order it was given. */
  public Page<GivenAdvice> of(String cycle, Page.Wanted wanted) {
    return advice.page("cycle = :cycle", Map.of("cycle", cycle), wanted);
  }

  /** The advice given last on a season, last first. */
  public List<GivenAdvice> latest(String cycle, int most) {
    return handle
        .createQuery("SELECT * FROM advice WHERE cycle = :cycle ORDER BY id DESC LIMIT :most")
        .bind("cycle", cycle)
        .bind("most", most)
        .map((row, context) -> advice(row))
        .list();
  }

  /** Keeps advice. */
  public void add(GivenAdvice advice) {
    handle
        .createUpdate(
            "INSERT INTO advice (id, cycle, given_at, as_of, person, engine, rules, cycle_file,"
                + " answer) VALUES (:key, :cycle, :givenAt, :asOf, :person, :engine, :rules,"
                + " :cycleFile, :answer)")
        .bind("key", advice.key())
        .bind("cycle", advice.cycle())
        .bind("givenAt", advice.givenAt().toEpochMilli())
        .bind("asOf", advice.asOf().toEpochMilli())
        .bind("person", advice.person())
        .bind("engine", advice.engine())
        .bind("rules", advice.rules())
        .bind("cycleFile", advice.cycleFile())
        .bind("answer", advice.answer())
        .execute();
  }

  /** What was signed about an advice, in the order it was signed. */
  public Page<Review> reviews(String about, Page.Wanted wanted) {
    return reviews.page("advice = :advice", Map.of("advice", about), wanted);
  }

  /** Keeps a review. */
  public void add(Review review) {
    handle
        .createUpdate(
            "INSERT INTO review (id, advice, person, at, verdict, note, typed_name)"
                + " VALUES (:key, :advice, :person, :at, :verdict, :note, :typedName)")
        .bind("key", review.key())
        .bind("advice", review.advice())
        .bind("person", review.person())
        .bind("at", review.at().toEpochMilli())
        .bind("verdict", review.verdict().name())
        .bind("note", review.note())
        .bind("typedName", review.typedName())
        .execute();
  }
}
