package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Keys;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** The people who use a record. A record without users has one, who needs no password. */
public final class People {

  private final Handle handle;
  private final KeyedRows<Person> rows;

  private People(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "person", People::person, Person::key);
  }

  /** The people of a record. */
  public static People of(Ledger ledger) {
    return new People(ledger.handle());
  }

  private static Person person(ResultSet row) throws SQLException {
    long closed = row.getLong("closed_at");
    Instant closedAt = row.wasNull() ? null : Instant.ofEpochMilli(closed);
    return new Person(
        row.getString("id"), row.getString("name"), Role.valueOf(row.getString("role")), closedAt);
  }

  /** One person. */
  public Optional<Person> find(String key) {
    return rows.find(key);
  }

  /** The person of that name, the closed ones too. */
  public Optional<Person> named(String name) {
    return rows.one("name = :name AND id <> :local", Map.of("name", name, "local", Person.LOCAL));
  }

  /** The hash of a person's password; empty for one who has none. */
  public Optional<String> password(String key) {
    return handle
        .createQuery("SELECT password FROM person WHERE id = :key AND password IS NOT NULL")
        .bind("key", key)
        .mapTo(String.class)
        .findOne();
  }

  /** Everybody with an account, by name. */
  public List<Person> all() {
    return handle
        .createQuery("SELECT * FROM person WHERE id <> :local ORDER BY name")
        .bind("local", Person.LOCAL)
        .map((row, context) -> person(row))
        .list();
  }

  /** The one person of a record without users, made when first asked for. */
  public Person local(Instant now) {
    handle
        .createUpdate(
            "INSERT INTO person (id, name, role, created_at)"
                + " VALUES (:local, :local, 'KEEPER', :now) ON CONFLICT DO NOTHING")
        .bind("local", Person.LOCAL)
        .bind("now", now.toEpochMilli())
        .execute();
    return new Person(Person.LOCAL, Person.LOCAL, Role.KEEPER, null);
  }

  /**
   * Adds a person.
   *
   * @param password the hash of the password
   * @throws IllegalArgumentException if the name is taken
   */
  public Person add(String name, Role role, String password, Instant now) {
    if (name.equals(Person.LOCAL) || named(name).isPresent()) {
      throw new IllegalArgumentException("there is a user \"" + name + "\" already");
    }
    Person person = new Person(Keys.next(now), name, role, null);
    handle
        .createUpdate(
            "INSERT INTO person (id, name, role, password, created_at)"
                + " VALUES (:key, :name, :role, :password, :now)")
        .bind("key", person.key())
        .bind("name", name)
        .bind("role", role.name())
        .bind("password", password)
        .bind("now", now.toEpochMilli())
        .execute();
    return person;
  }

  /** Gives a person another password, which ends all sessions. */
  public void setPassword(Person person, String password) {
    handle
        .createUpdate("UPDATE person SET password = :password WHERE id = :key")
        .bind("password", password)
        .bind("key", person.key())
        .execute();
    Sessions.of(handle).endAllOf(person.key());
  }

  /** Closes or opens an account. Closing ends its sessions and its tokens stop working. */
  public void close(Person person, @Nullable Instant at) {
    handle
        .createUpdate("UPDATE person SET closed_at = :at WHERE id = :key")
        .bind("at", at == null ? null : at.toEpochMilli())
        .bind("key", person.key())
        .execute();
    Sessions.of(handle).endAllOf(person.key());
  }
}
