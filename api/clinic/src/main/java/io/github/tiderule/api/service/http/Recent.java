package io.github.tiderule.api.service.http;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The last few answers, by what was asked: the same record has the same answer, and a page that is
 * looked at again need not work it out again. Safe for use by many threads.
 */
final class Recent<Q, A> {

  private static final float LOAD = 0.75f;

  private final Map<Q, A> answers;

  /**
   * None yet.
   *
   * @param most how many are remembered; those asked for longest ago go first
   */
  Recent(int most) {
    this.answers =
        new LinkedHashMap<>(2 * most, LOAD, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<Q, A> eldest) {
            return size() > most;
          }
        };
  }

  synchronized Optional<A> find(Q question) {
    return Optional.ofNullable(answers.get(question));
  }

  synchronized A keep(Q question, A answer) {
    answers.put(question, answer);
    return answer;
  }
}
