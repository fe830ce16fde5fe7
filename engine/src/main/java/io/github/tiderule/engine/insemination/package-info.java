/**
 * The arithmetic of semen in hand. Every quantity is a {@link
 * io.github.tiderule.engine.insemination.Span}: what was counted is exact, what was judged from the
 * look carries the range of the word for it, and the range goes through every formula.
 *
 * <pre>
 * sperm        = volume × concentration                            (million = mL × million per mL)
 * usable       = sperm × share progressively motile × share normal (thomas-2013)
 * doses        = usable ÷ floor of the route, rounded down         (100 million uterus, 200 vagina)
 * units        = floor of the route ÷ usable per unit, rounded up  (straws, vials, pellets)
 * extender     = doses × wanted mL − mL in hand                    (a wanted volume)
 * extender     = sperm ÷ wanted concentration − mL in hand         (a wanted concentration)
 * semen taken  = wanted concentration × wanted mL × doses ÷ concentration, and
 * extender     = wanted mL × doses − semen taken                   (both wanted)
 * </pre>
 */
@NullMarked
package io.github.tiderule.engine.insemination;

import org.jspecify.annotations.NullMarked;
