package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Tokens with which programs speak for a person. The record holds their digests only. */
public final class Tokens {

  /** What every token begins with, so that one lost in a file can be found. */
  public static final String PREFIX = "tdr_";

  /**
   * A token.
   *
   * @param label what its owner calls it
   * @param revokedAt when it was revoked; absent while it works
   */
  public record Token(
      String key, String person, String label, Instant createdAt, @Nullable Instant revokedAt) {}

  /**
   * A token just issued.
   *
   * @param secret what the program sends; it cannot be had again
   */
  public record Issued(String secret, Token token) {}

  private final Handle handle;
  private final KeyedRows<Token> rows;

  private Tokens(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "api_token", Tokens::token, Token::key);
  }

  /** The tokens of a record. */
  public static Tokens of(Ledger ledger) {
    return new Tokens(ledger.handle());
  }

  private static Token token(ResultSet row) throws SQLException {
    long revoked = row.getLong("revoked_at");
    Instant revokedAt = row.wasNull() ? null : Instant.ofEpochMilli(revoked);
    return new Token(
        row.getString("id"),
        row.getString("person"),
        row.getString("label"),
        Instant.ofEpochMilli(row.getLong("created_at")),
        revokedAt);
  }

  /** Issues a token. */
  public Issued issue(Person person, String label, Instant now) {
    String secret = PREFIX + Secrets.next();
    Token token = new Token(Keys.next(now), person.key(), label, now, null);
    handle
        .createUpdate(
            "INSERT INTO api_token (id, person, digest, label, created_at)"
                + " VALUES (:key, :person, :digest, :label, :now)")
        .bind("key", token.key())
        .bind("person", token.person())
        .bind("digest", Secrets.digest(secret))
        .bind("label", label)
        .bind("now", now.toEpochMilli())
        .execute();
    return new Issued(secret, token);
  }

  /** The token of a secret, unless it is revoked. */
  public Optional<Token> find(String secret) {
    return rows.one(
        "digest = :digest AND revoked_at IS NULL", Map.of("digest", Secrets.digest(secret)));
  }

  /** One token of a person. */
  public Optional<Token> find(Person person, String key) {
    return rows.one("id = :key AND person = :person", Map.of("key", key, "person", person.key()));
  }

  /** The tokens of a person, the revoked ones too, in the order they were issued. */
  public Page<Token> of(Person person, Page.Wanted wanted) {
    return rows.page("person = :person", Map.of("person", person.key()), wanted);
  }

  /** Revokes a token; one revoked before stays so. */
  public void revoke(Token token, Instant now) {
    handle
        .createUpdate(
            "UPDATE api_token SET revoked_at = :now WHERE id = :key AND revoked_at IS NULL")
        .bind("now", now.toEpochMilli())
        .bind("key", token.key())
        .execute();
  }
}
