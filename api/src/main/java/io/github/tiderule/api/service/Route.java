package io.github.tiderule.api.service;

/**
 * One thing the service does.
 *
 * @param path as in the OpenAPI document
 */
record Route(Method method, String path, Need need, Action action) {

  /** The methods there are. */
  enum Method {
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
  enum Need {
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
  interface Action {
    Answer answer(Call call);
  }
}
