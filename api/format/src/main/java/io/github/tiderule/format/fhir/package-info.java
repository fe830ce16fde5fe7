/**
 * Progesterone results as HL7 FHIR R4 Observations: what a file of them adds to a season, and a
 * season's results as a bundle of them. LOINC and UCUM say what was measured, and in which unit;
 * what they do not say is not guessed.
 */
@NullMarked
package io.github.tiderule.format.fhir;

import org.jspecify.annotations.NullMarked;
