package io.github.tiderule.api.service.http;

/**
 * One thing the service does.
 *
 * @param path as in the OpenAPI document, if it is in there
 * @param isPage whether it answers people, with pages and forms, and stands in no such document
 */
public record Route(Method method, String path, Need need, Action action, boolean isPage) {

  /** One for programs. */
  public Route(Method method, String path, Need need, Action action) {
    this(method, path, need, action, false);
  }

  /** One for people. */
  public static Route page(Method method, String path, Need need, Action action) {
    return new Route(method, path, need, action, true);
  }

  /** The methods there are. */
  public enum Method {
    GET,
    POST,
    PUT,
    DELETE;

    /** Whether it changes nothing. */
    boolean isSafe() {
      return this == GET;
    }
  }

  /** Who may ask at all; what of it concerns them is decided where it is done. */
  public enum Need {
    /** Whoever comes. */
    NOBODY,
    /** Whoever is signed in. */
    ANYBODY,
    /** Keepers and vets. */
    WRITER,
    /** Vets. */
    VET
  }

  /** Answers one request. */
  public interface Action {
    Answer answer(Call call);
  }
}
