package io.github.tiderule.api.service.http;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class RecentTest {

  @Test
  void whatWasAskedForLongestAgoGoesFirst() {
    Recent<String, Integer> recent = new Recent<>(2);
    recent.keep("a", 1);
    recent.keep("b", 2);
    assertThat(recent.find("a"), is(Optional.of(1)));
    recent.keep("c", 3);
    assertThat(recent.find("b"), is(Optional.empty()));
    assertThat(recent.find("a"), is(Optional.of(1)));
    assertThat(recent.find("c"), is(Optional.of(3)));
  }
}
