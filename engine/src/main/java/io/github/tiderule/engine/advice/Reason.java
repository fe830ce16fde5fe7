package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A rule's reason for or against a day.
 *
 * @param sources keys of the source list
 * @param observations ids in the cycle file
 */
public record Reason(
    String rule, Effect effect, Sentence text, List<String> sources, List<String> observations) {}
