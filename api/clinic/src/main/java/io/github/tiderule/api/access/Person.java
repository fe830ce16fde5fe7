package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Female;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A person who uses the record.
 *
 * @param closedAt when the account was closed; absent for an open one
 */
public record Person(String key, String name, Role role, @Nullable Instant closedAt) {

  /** Key of the one person of a record without users. */
  public static final String LOCAL = "local";

  /** Whether this is the one person of a record without users. */
  public boolean isLocal() {
    return key.equals(LOCAL);
  }

  /** Whether this person may see a female and all that belongs to her. */
  public boolean maySee(Female female) {
    return female.owner().equals(key) || (female.shared() && role.isOfTheClinic());
  }

  /** Whether this person may enter observations about a female and ask for advice. */
  public boolean mayEnter(Female female) {
    return maySee(female) && role.mayWrite();
  }

  /** Whether this person may say who a female is and who may see her. */
  public boolean mayDecide(Female female) {
    return female.owner().equals(key) && role.mayWrite();
  }
}
