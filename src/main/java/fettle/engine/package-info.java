/** Compiles the rules when the project is built, and loads them, with their pages, when the program runs. */
package fettle.engine;
