package io.github.tiderule.api.service.http;

import java.util.List;

/** The part of the service that people look at: routes outside {@code /v1} that answer as pages. */
public interface Site {

  /** A service without one. */
  Site NONE =
      new Site() {
        @Override
        public List<Route> routes() {
          return List.of();
        }

        @Override
        public Answer refused(Call call, Refusal refusal) {
          throw refusal;
        }
      };

  /** What it answers to; each is a {@link Route#page}. */
  List<Route> routes();

  /**
   * What a person sees whose request is refused.
   *
   * @param call by nobody known, where it is refused before it is known who asks
   */
  Answer refused(Call call, Refusal refusal);
}
