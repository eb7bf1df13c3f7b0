/** Finds the best build of a platform for a lens under demands, and proves it. */
package fettle.space.best;
