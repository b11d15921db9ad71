"""Words and sentences of everyday English for what must not be taken for a reading, from Debian's packages fortunes and fortunes-min: words.py -> words.txt, sentences.txt."""
import re,glob,random,collections
random.seed(1); sents=set(); cnt=collections.Counter()
for f in glob.glob('/usr/share/games/fortunes/*'):
    if f.endswith(('.dat','.u8')) or any(k in f for k in('off','ascii-art','perl','debian-hints')): continue
    try: t=open(f,encoding='utf8').read()
    except Exception: continue
    for para in t.split('\n%\n'):
        para=' '.join(l.strip() for l in para.split('\n') if not l.strip().startswith('--'))
        for s in re.split(r'[.!?;:]+\s',para):
            s=re.sub(r"[^A-Za-z' ]",' ',s).lower(); s=re.sub(r'\s+',' ',s).strip(" '")
            w=s.split()
            for x in w: cnt[x]+=1
            if 3<=len(w)<=10 and all(re.fullmatch(r"[a-z']{1,12}",x) for x in w): sents.add(s)
common=[w for w,c in cnt.most_common(6000) if re.fullmatch(r"[a-z]{2,12}",w)]
ok=set(common); sents=[s for s in sents if all(w in ok or w in("a","i") or "'" in w for w in s.split())]
random.shuffle(sents); sents=sents[:6000]
trade="hold the flashlight a little higher|where is the screwdriver|the filter looks terrible|hand me the wrench please|turn the thermostat up two degrees|I will be back in ten minutes|we had seven of these last week|the dog is in the yard|somebody left the door open|can you move the ladder|what time is lunch|that was three years ago|the blower is loud today|it was colder on monday|call me at four thirty|the number is on the card|two more and we can go|is there coffee|watch your head|mind the step|it sounds fine to me|the water heater is next|check the breaker|the radio said rain|we need a new filter|close the window please|the customer is upstairs|I heard something|look at the flame|it smells like dust|the pilot was out|put the panel back|that is about twenty minutes|give me a second|the furnace is running now|wait for the burner|five or six inches of pipe|about a hundred dollars|half an inch|three quarters of a turn".split("|")
open("sentences.txt","w").write('\n'.join(sents+trade*10)); open("words.txt","w").write('\n'.join(common[:3500]))
print(len(sents),len(common)); print(sents[:10])
