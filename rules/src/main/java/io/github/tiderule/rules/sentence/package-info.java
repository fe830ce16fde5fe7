/**
 * What is told, as data: a template in English and the typed parts that fill it.
 *
 * <p>A template has places in braces. An empty place, <code>{}</code>, takes the next thing that is
 * told of; a place with a name, <code>{care.dose.vaginal}</code>, takes the parameter of that id,
 * so that a told number is the number a rule went by. After a colon stand forms, one after the
 * other: a change of unit first ({@code million}, {@code percent}, {@code days}, {@code weeks},
 * {@code hours}, {@code minutes}, {@code nmol}, …), then how it is written ({@code words}, or
 * {@code one day|# days} for one and many). {@link io.github.tiderule.rules.sentence.NumberForm}
 * lists them.
 *
 * <p>The template is the key under which other languages keep theirs. Nobody reads finished words
 * again: whoever wants the names of observations, another unit or another language phrases the
 * sentence anew ({@link io.github.tiderule.rules.sentence.Phrasing}).
 */
@NullMarked
package io.github.tiderule.rules.sentence;

import org.jspecify.annotations.NullMarked;
