package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;

/**
 * One firing of one rule whose conclusions still stand at the end of the stage.
 *
 * @param observations ids of the observations its conditions matched, without repeats
 * @param concluded what it concluded, at least one
 */
public record Firing(RuleCard rule, List<String> observations, List<Conclusion> concluded) {}
