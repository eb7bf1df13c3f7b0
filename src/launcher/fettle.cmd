@echo off
rem Starts Fettle with the Java of JAVA_HOME, or else the one on the PATH. See the script without an ending for the flags.
setlocal
set "FETTLE_LIB=%~dp0..\lib"
set "FETTLE_JAVA=java.exe"
if defined JAVA_HOME set "FETTLE_JAVA=%JAVA_HOME%\bin\java.exe"
set "FETTLE_QUICK=-XX:TieredStopAtLevel=1 -XX:C1MaxInlineSize=18 -XX:Tier3BackEdgeThreshold=6000"
set "FETTLE_SMALL=-Xms160m -XX:NewSize=50m"
set "FETTLE_LONG=-XX:FreqInlineSize=80 -XX:InlineSmallCode=1000 -XX:C1MaxInlineSize=12 -XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
set "FETTLE_SIZES=%FETTLE_LONG% %FETTLE_SMALL%"
if "%~1"=="" set "FETTLE_SIZES=%FETTLE_QUICK% -Xms90m -XX:NewSize=60m"
for %%C in (validate explain rules start completion) do if "%~1"=="%%C" set "FETTLE_SIZES=%FETTLE_QUICK% -Xms90m -XX:NewSize=60m"
for %%C in (lint survey ladder compare) do if "%~1"=="%%C" set "FETTLE_SIZES=%FETTLE_QUICK% %FETTLE_SMALL%"
set "FETTLE_ARCHIVE=fettle"
for %%C in (lint validate) do if "%~1"=="%%C" set "FETTLE_ARCHIVE=%%C"
set "FETTLE_COLLECTOR=-XX:+UseSerialGC"
set "FETTLE_FLAGS=%FETTLE_COLLECTOR% -XX:MinHeapFreeRatio=20 -XX:-UsePerfData -Xshare:auto -Xlog:disable"
if not defined FETTLE_JAVA_OPTIONS if not defined JDK_JAVA_OPTIONS if not defined JAVA_TOOL_OPTIONS if not defined _JAVA_OPTIONS goto start
set | find "jdwp" >nul && goto start
"%FETTLE_JAVA%" %FETTLE_SIZES% %FETTLE_FLAGS% %FETTLE_JAVA_OPTIONS% -version >nul 2>&1 && goto start
echo fettle: Java does not start with what is set by FETTLE_JAVA_OPTIONS, JDK_JAVA_OPTIONS, JAVA_TOOL_OPTIONS or _JAVA_OPTIONS; mend or unset that. Java says: >&2
"%FETTLE_JAVA%" %FETTLE_SIZES% %FETTLE_FLAGS% %FETTLE_JAVA_OPTIONS% -version >&2
exit /b 2
:start
"%FETTLE_JAVA%" %FETTLE_SIZES% %FETTLE_FLAGS% "-XX:SharedArchiveFile=%FETTLE_LIB%\%FETTLE_ARCHIVE%.jsa" -Dfile.encoding=UTF-8 %FETTLE_JAVA_OPTIONS% -cp "%FETTLE_LIB%\fettle.jar" fettle.command.Main %*
exit /b %ERRORLEVEL%
