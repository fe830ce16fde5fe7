package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;

/**
 * What the breedings already done are worth.
 *
 * @param count how many there are
 * @param eggShare what they meet together
 * @param another expected egg share another breeding, or the rest of the plan, would add; 0 where
 *     none can be given
 * @param text in words: whether another is worth it, and what to do from here
 */
public record Bred(int count, EggShare eggShare, double another, Sentence text) {}
