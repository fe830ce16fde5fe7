/**
 * The case corpus: folders of a cycle file and what its answer must hold, and one judge over them.
 *
 * <p>A case is data. {@link Corpus} finds the folders, {@link Answers} takes each cycle file
 * through the reader and the engine, {@link Judge} holds the answer against {@code expect.yaml},
 * key by key, and {@link CaseResult} tells what differs. Every key has one {@link Expecting} that
 * knows it; a key nobody knows is a difference like any other, so that a typing slip cannot pass.
 */
@NullMarked
package io.github.tiderule.cases.corpus;

import org.jspecify.annotations.NullMarked;
