@echo off
rem Starts Fettle with the Java of JAVA_HOME, or else the one on the PATH. See the script without an ending for the flags.
setlocal
set "FETTLE_LIB=%~dp0..\lib"
set "FETTLE_JAVA=java.exe"
if defined JAVA_HOME set "FETTLE_JAVA=%JAVA_HOME%\bin\java.exe"
set "FETTLE_COMPILER="
if "%~1"=="" set "FETTLE_COMPILER=-XX:TieredStopAtLevel=1"
for %%C in (lint validate explain rules) do if "%~1"=="%%C" set "FETTLE_COMPILER=-XX:TieredStopAtLevel=1"
"%FETTLE_JAVA%" %FETTLE_COMPILER% -XX:+UseSerialGC -Xms64m -XX:NewSize=40m -XX:MinHeapFreeRatio=20 -Xshare:auto "-XX:SharedArchiveFile=%FETTLE_LIB%\fettle.jsa" -Xlog:disable -Dfile.encoding=UTF-8 %FETTLE_JAVA_OPTIONS% -cp "%FETTLE_LIB%\fettle.jar" fettle.command.Main %*
exit /b %ERRORLEVEL%
