-- For wrk: each request is for a lot of the list by chance, so that no page is asked for twice in a row.
local lots = {}
for line in io.lines(os.getenv("LOTS")) do lots[#lots + 1] = line end
local seed = 0
function setup(thread)
  seed = seed + 1
  thread:set("begin", seed)
end
function init() math.randomseed(begin) end
function request() return wrk.format("GET", lots[math.random(#lots)]) end
